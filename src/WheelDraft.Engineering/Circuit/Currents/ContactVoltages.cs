using System.Numerics;

namespace WheelDraft.Engineering;

/// <summary>Which open contacts have voltage across them while the wheel stands.</summary>
/// <remarks>Sound circuit, inputs in any position, motor not on for certain. A net that nothing gives a potential takes those of every net it
/// could be joined to, as for working voltages; where a potential has no answer there is taken to be voltage. Behind the open fuse
/// of a short there is none, unless the short leaves the motor undecided: then another line may still be live.</remarks>
internal sealed class ContactVoltages
{
    // Solved voltages agree to rounding; what is smaller is none, V.
    private const double NoneV = 1e-6;

    private readonly CircuitModel _model;
    private readonly ulong[][] _across;

    /// <summary>Looks at every position of the inputs that matter to a contact and to the motor together.</summary>
    public ContactVoltages(SoundCircuit sound)
    {
        _model = sound.Model;
        _across = [.. _model.Contacts.Take(_model.Outputs).Select(_ => BitRow.Empty(_model.Turn.Positions.Count))];
        NetworkParts parts = new(_model, sound.Sheet.Fault);
        foreach (IGrouping<int, int> alike in Enumerable.Range(0, _across.Length).GroupBy(c => parts.ElementPart[c]))
        {
            Look(sound.Sheet, parts, alike.Key, [.. alike]);
        }
    }

    private void Look(StateSheet sheet, NetworkParts parts, int part, int[] contacts)
    {
        NetworkSplit split = new(_model);
        SectionSolver solver = new(_model);
        NodePotentials potentials = new(_model);
        int own = part < 0 ? 0 : parts.Parts[part].Inputs;
        int matters = own | sheet.MatterToMotion;

        // Too many together: the motor may then stand whatever the contact's own inputs do, which is the safe side.
        bool together = InputBudget.Allows(_model, matters);
        ulong[] stands = together ? [] : MayStand(sheet);
        foreach (int inputs in InputMask.Subsets(together ? matters : own))
        {
            bool isSolved = split.Split(sheet.Fault, inputs);
            if (isSolved)
            {
                potentials.Read(split, solver, part < 0 ? [] : parts.Parts[part].Nodes);
            }

            foreach (int c in contacts)
            {
                NetworkElement contact = _model.Contacts[c];
                Add(sheet, inputs, c, isSolved ? potentials.Of[contact.A] : [], isSolved ? potentials.Of[contact.B] : [], stands);
            }
        }
    }

    private ulong[] MayStand(StateSheet sheet)
    {
        ulong[] stands = new ulong[sheet.Words];
        foreach (int inputs in InputMask.Subsets(sheet.MatterToMotion))
        {
            ReadOnlySpan<ulong> on = sheet.On(inputs, _model.Motor);
            for (int w = 0; w < stands.Length; w++)
            {
                stands[w] |= ~on[w];
            }
        }

        return stands;
    }

    /// <summary>Contacts open at a position of the wheel, with voltage across them in some state in which it can stand there.</summary>
    public IReadOnlyList<int> At(int position) => [.. Enumerable.Range(0, _across.Length).Where(c => BitRow.Has(_across[c], position))];

    private void Add(StateSheet sheet, int inputs, int contact, List<NodePotential> first, List<NodePotential> second, ulong[] stands)
    {
        ulong[] voltage = new ulong[sheet.Words];
        ulong[] known = new ulong[sheet.Words];
        foreach (NodePotential a in first)
        {
            foreach (NodePotential b in second)
            {
                bool together = a.Floats >= 0 && a.Floats == b.Floats;
                bool differs = !together && !(Complex.Abs(a.Volts - b.Volts) <= NoneV);
                AddCommon(a.Positions, b.Positions, known, differs ? voltage : []);
            }
        }

        ReadOnlySpan<ulong> on = sheet.On(inputs, _model.Motor);
        ReadOnlySpan<ulong> undecided = sheet.Undecided(inputs, _model.Motor);
        ReadOnlySpan<ulong> isShort = sheet.Short(inputs);
        ulong[] closed = _model.ClosedPositions[contact];
        for (int w = 0; w < voltage.Length; w++)
        {
            ulong isDead = isShort[w] & ~undecided[w];
            ulong rests = stands.Length > 0 ? stands[w] : ~on[w] & ~isDead;
            _across[contact][w] |= (voltage[w] | ~known[w] | isShort[w]) & ~closed[w] & rests;
        }
    }

    private static void AddCommon(ulong[] a, ulong[] b, ulong[] known, Span<ulong> voltage)
    {
        for (int w = 0; w < known.Length; w++)
        {
            ulong common = a[w] & b[w];
            known[w] |= common;
            if (!voltage.IsEmpty)
            {
                voltage[w] |= common;
            }
        }
    }
}
