using MathNet.Numerics.LinearAlgebra;
using WheelDraft.Engineering;
using Complex = System.Numerics.Complex;

namespace WheelDraft.Tests;

/// <summary>
/// The oracle for networks, in another formulation than the product's: the sparse tableau of Hachtel, Brayton and Gustavson
/// (1971). Every switch and load is a branch with its own current; a closed switch is "no voltage", an open one "no current", a
/// load "voltage = Z times current"; nothing is merged and nothing is split into blocks. The overdetermined system goes through
/// the singular value decomposition of MathNet.Numerics, which gives the least solution where currents round a loop of closed
/// switches, or potentials that nothing fixes, are free; load voltages are unique all the same.
/// </summary>
internal static class TableauSolver
{
    /// <summary>Voltages over the loads, in order.</summary>
    public static double[] LoadVolts(CircuitBuilder circuit, double angleRad, int inputs)
    {
        Dictionary<string, int> nets = new(StringComparer.Ordinal);
        List<(int A, int B, Complex? Impedance, bool Closed)> branches = [];
        int Net(string name) => nets.TryGetValue(name, out int n) ? n : nets[name] = nets.Count;
        Net("L");
        Net("N");
        Net("E");
        foreach (ContactSchedule contact in circuit.Contacts)
        {
            branches.Add((Net(contact.WheelNet), Net(contact.WiperNet), null, contact.Periods.Any(p => p.Closed.Contains(angleRad))));
        }

        for (int i = 0; i < circuit.Inputs.Count; i++)
        {
            branches.Add((Net(circuit.Inputs[i].From), Net(circuit.Inputs[i].To), null, (inputs >> i & 1) != 0));
        }

        foreach (LoadBrief load in circuit.Loads)
        {
            branches.Add((Net(load.From), Net(load.To), Impedance(load.Rating, circuit.SupplyV), false));
        }

        Vector<Complex> solution = Solve(branches, nets.Count, circuit.SupplyV);
        return [.. branches.Where(b => b.Impedance is not null).Select(b => (solution[b.A] - solution[b.B]).Magnitude)];
    }

    private static Complex Impedance(LoadRating rating, double supplyV) => rating switch
    {
        RatedImpedance z => new Complex(z.ResistanceOhm, z.ReactanceOhm),
        // Apparent power S = P / pf; Z = V² / S* with the angle of lag, in polar form.
        RatedPower p => Complex.FromPolarCoordinates(supplyV * supplyV / (p.PowerW / p.PowerFactor), Math.Acos(p.PowerFactor)),
        RatedCurrent c => Complex.FromPolarCoordinates(supplyV / c.CurrentA, Math.Acos(c.PowerFactor)),
        _ => throw new NotSupportedException(),
    };

    private static Vector<Complex> Solve(List<(int A, int B, Complex? Impedance, bool Closed)> branches, int nets, double supplyV)
    {
        // Unknowns: net potentials, then branch currents. Rows: one a branch, one a free net, three held nets.
        int unknowns = nets + branches.Count;
        Matrix<Complex> matrix = Matrix<Complex>.Build.Dense(branches.Count + nets, unknowns);
        Vector<Complex> right = Vector<Complex>.Build.Dense(branches.Count + nets);
        for (int b = 0; b < branches.Count; b++)
        {
            (int a, int to, Complex? impedance, bool closed) = branches[b];
            if (impedance is null && !closed)
            {
                matrix[b, nets + b] = 1;
            }
            else
            {
                matrix[b, a] += 1;
                matrix[b, to] -= 1;
                matrix[b, nets + b] = impedance is { } z ? -z : Complex.Zero;
            }

            matrix[branches.Count + a, nets + b] += 1;
            matrix[branches.Count + to, nets + b] -= 1;
        }

        for (int held = 0; held < 3; held++)
        {
            int row = branches.Count + held;
            matrix.ClearRow(row);
            matrix[row, held] = 1;
            right[row] = held == 0 ? supplyV : 0;
        }

        return LeastSolution(matrix, right);
    }

    private static Vector<Complex> LeastSolution(Matrix<Complex> matrix, Vector<Complex> right)
    {
        MathNet.Numerics.LinearAlgebra.Factorization.Svd<Complex> svd = matrix.Svd();
        Vector<Complex> rotated = svd.U.ConjugateTranspose() * right;
        Vector<Complex> scaled = Vector<Complex>.Build.Dense(matrix.ColumnCount);
        double largest = svd.S[0].Magnitude;
        for (int i = 0; i < svd.S.Count; i++)
        {
            scaled[i] = svd.S[i].Magnitude > 1e-12 * largest ? rotated[i] / svd.S[i] : Complex.Zero;
        }

        return svd.VT.ConjugateTranspose() * scaled;
    }
}
