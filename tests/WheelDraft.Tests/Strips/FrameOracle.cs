using MathNet.Numerics.LinearAlgebra;

namespace WheelDraft.Tests.Strips;

/// <summary>A space frame of straight beams, solved with MathNet by the stiffness method: an oracle for strips, written
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
    internal Vector<double> Solve()
    {
        int n = 6 * _nodes.Count;
        Matrix<double> full = Matrix<double>.Build.Dense(n, n);
        foreach (Beam beam in _beams)
        {
            Matrix<double> t = Turn(beam);
            Matrix<double> global = t.TransposeThisAndMultiply(Local(beam)) * t;
            int[] map = [.. Enumerable.Range(0, 6).Select(d => (6 * beam.From) + d), .. Enumerable.Range(0, 6).Select(d => (6 * beam.To) + d)];
            for (int i = 0; i < 12; i++)
            {
                for (int j = 0; j < 12; j++)
                {
                    full[map[i], map[j]] += global[i, j];
                }
            }
        }

        int[] free = [.. Enumerable.Range(0, n).Where(d => !_fixed.Contains(d))];
        Matrix<double> reduced = Matrix<double>.Build.Dense(free.Length, free.Length, (i, j) => full[free[i], free[j]]);
        Vector<double> load = Vector<double>.Build.Dense(free.Length, i => _loads.GetValueOrDefault(free[i]));
        Vector<double> found = reduced.Solve(load);
        Vector<double> all = Vector<double>.Build.Dense(n);
        for (int i = 0; i < free.Length; i++)
        {
            all[free[i]] = found[i];
        }

        return all;
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
