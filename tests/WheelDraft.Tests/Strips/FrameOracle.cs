using MathNet.Numerics.LinearAlgebra;

namespace WheelDraft.Tests.Strips;

/// <summary>A space frame of straight beams, solved by the stiffness method: an oracle for strips, written
/// independently of them (K. J. Bathe and others; element matrix of any textbook on matrix structural analysis).</summary>
internal sealed class FrameOracle(double modulus, double shear)
{
    private readonly List<double[]> _nodes = [];
    private readonly List<Beam> _beams = [];
    private readonly Dictionary<int, double> _loads = [];
    private readonly HashSet<int> _fixed = [];

    private sealed record Beam(int From, int To, double Area, double Iy, double Iz, double J, Vector<double> YAxis);

    internal int Node(double x, double y, double z)
    {
        _nodes.Add([x, y, z]);
        return _nodes.Count - 1;
    }

    /// <summary>A beam whose local y axis is given: Iz is about local z (bending along local y), Iy about local y.</summary>
    internal void Add(int from, int to, (double Area, double Iy, double Iz, double J) section, double[] yAxis) =>
        _beams.Add(new(from, to, section.Area, section.Iy, section.Iz, section.J, Vector<double>.Build.Dense(yAxis)));

    internal void Fix(int node, params int[] directions)
    {
        foreach (int d in directions.Length == 0 ? [0, 1, 2, 3, 4, 5] : directions)
        {
            _fixed.Add((6 * node) + d);
        }
    }

    internal void Load(int node, int direction, double value) => _loads[(6 * node) + direction] = value;

    /// <summary>All displacements, six a node.</summary>
    /// <remarks>Beams join nodes of near numbers, so the stiffnesses lie in a band along the diagonal; the matrix is positive definite, and is solved by
    /// Cholesky's factors, which keep to the band (G. H. Golub and C. F. Van Loan, "Matrix Computations", banded Cholesky).</remarks>
    internal Vector<double> Solve()
    {
        int n = 6 * _nodes.Count;
        int width = (6 * _beams.Max(b => Math.Abs(b.From - b.To))) + 6;
        double[][] band = [.. Enumerable.Range(0, n).Select(_ => new double[width])];
        foreach (Beam beam in _beams)
        {
            Matrix<double> t = Turn(beam);
            Matrix<double> global = t.TransposeThisAndMultiply(Local(beam)) * t;
            int[] map = [.. Enumerable.Range(0, 6).Select(d => (6 * beam.From) + d), .. Enumerable.Range(0, 6).Select(d => (6 * beam.To) + d)];
            for (int i = 0; i < 12; i++)
            {
                for (int j = 0; j < 12; j++)
                {
                    if (map[i] >= map[j] && !_fixed.Contains(map[i]) && !_fixed.Contains(map[j]))
                    {
                        band[map[i]][map[i] - map[j]] += global[i, j];
                    }
                }
            }
        }

        foreach (int still in _fixed)
        {
            band[still][0] = 1;
        }

        return Vector<double>.Build.Dense(SolveBand(band, [.. Enumerable.Range(0, n).Select(d => _fixed.Contains(d) ? 0 : _loads.GetValueOrDefault(d))]));
    }

    /// <summary>Solves a positive definite matrix of which each row has what lies left of the diagonal, from it outwards; the rows become its factor.</summary>
    private static double[] SolveBand(double[][] rows, double[] right)
    {
        int width = rows[0].Length;
        for (int i = 0; i < rows.Length; i++)
        {
            int first = Math.Max(0, i - width + 1);
            for (int j = first; j <= i; j++)
            {
                double left = rows[i][i - j];
                for (int k = Math.Max(first, j - width + 1); k < j; k++)
                {
                    left -= rows[i][i - k] * rows[j][j - k];
                }

                rows[i][i - j] = j < i ? left / rows[j][0] : left > 0 ? Math.Sqrt(left) : throw new InvalidOperationException("The frame is not held.");
            }

            for (int k = first; k < i; k++)
            {
                right[i] -= rows[i][i - k] * right[k];
            }

            right[i] /= rows[i][0];
        }

        for (int i = rows.Length - 1; i >= 0; i--)
        {
            right[i] /= rows[i][0];
            for (int k = Math.Max(0, i - width + 1); k < i; k++)
            {
                right[k] -= rows[i][i - k] * right[i];
            }
        }

        return right;
    }

    /// <summary>End forces of a beam in its own axes: axial, shear y, shear z, torque, moment y, moment z at both ends.</summary>
    internal Vector<double> EndForces(int index, Vector<double> displacements)
    {
        Beam beam = _beams[index];
        Vector<double> own = Vector<double>.Build.Dense(12, i => displacements[(6 * (i < 6 ? beam.From : beam.To)) + (i % 6)]);
        return Local(beam) * (Turn(beam) * own);
    }

    internal Matrix<double> LocalOf(int index) => Local(_beams[index]);

    private double Length(Beam beam) =>
        Math.Sqrt(_nodes[beam.From].Zip(_nodes[beam.To], (a, b) => (b - a) * (b - a)).Sum());

    private Matrix<double> Local(Beam beam)
    {
        double l = Length(beam);
        Matrix<double> k = Matrix<double>.Build.Dense(12, 12);
        void Pair(int i, double value)
        {
            k[i, i] = k[i + 6, i + 6] = value;
            k[i, i + 6] = k[i + 6, i] = -value;
        }

        Pair(0, modulus * beam.Area / l);
        Pair(3, shear * beam.J / l);
        void Bending(int v, int r, double ei, int sign)
        {
            k[v, v] = k[v + 6, v + 6] = 12 * ei / (l * l * l);
            k[v, v + 6] = k[v + 6, v] = -12 * ei / (l * l * l);
            k[r, r] = k[r + 6, r + 6] = 4 * ei / l;
            k[r, r + 6] = k[r + 6, r] = 2 * ei / l;
            double c = sign * 6 * ei / (l * l);
            k[v, r] = k[r, v] = k[v, r + 6] = k[r + 6, v] = c;
            k[v + 6, r] = k[r, v + 6] = k[v + 6, r + 6] = k[r + 6, v + 6] = -c;
        }

        Bending(1, 5, modulus * beam.Iz, 1);
        Bending(2, 4, modulus * beam.Iy, -1);
        return k;
    }

    private Matrix<double> Turn(Beam beam)
    {
        double[] a = _nodes[beam.From];
        double[] b = _nodes[beam.To];
        double l = Length(beam);
        Vector<double> x = Vector<double>.Build.Dense(3, i => (b[i] - a[i]) / l);
        Vector<double> y = (beam.YAxis - (x * x.DotProduct(beam.YAxis))).Normalize(2);
        Vector<double> z = Vector<double>.Build.Dense([(x[1] * y[2]) - (x[2] * y[1]), (x[2] * y[0]) - (x[0] * y[2]), (x[0] * y[1]) - (x[1] * y[0])]);
        Matrix<double> t = Matrix<double>.Build.Dense(12, 12);
        for (int block = 0; block < 4; block++)
        {
            for (int i = 0; i < 3; i++)
            {
                t[(3 * block) + 0, (3 * block) + i] = x[i];
                t[(3 * block) + 1, (3 * block) + i] = y[i];
                t[(3 * block) + 2, (3 * block) + i] = z[i];
            }
        }

        return t;
    }
}
