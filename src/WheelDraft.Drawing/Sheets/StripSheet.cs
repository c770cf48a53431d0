using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>One strip: its blank with fold lines, its formed shape from the side and from the wiper side, folds and figures in tables.</summary>
internal static class StripSheet
{
    // Three views above each other want lying paper.
    private static IEnumerable<PaperSize> Sizes => [PaperSize.A3, PaperSize.A2, PaperSize.A1, PaperSize.A0];

    /// <summary>Draws a strip on the smallest sheet on which everything finds room.</summary>
    /// <param name="design">The design.</param>
    /// <param name="index">Which strip, from 0 in file order.</param>
    /// <param name="number">Its place in the set.</param>
    public static Sheet Of(Design design, int index, SheetNumber? number = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        PlacedStrip strip = design.Strips.Strips[index];
        StripWords words = new(design, strip);
        SheetMatter matter = new([words.FoldTable(), words.FigureTable()], words.Notes()) { Caution = new(SheetWordsOf.CautionsOf(design)) };
        PaperSize[] papers = [.. SheetPapers.Of(design, Sizes)];
        (PaperSize size, SheetPlan plan, StripViews views) =
            SheetPlan.Best(papers, matter, (_, shared) => StripViews.Fits(strip, shared.Picture) ? new StripViews(design, strip, shared.Picture) : null, v => v.Scale.Factor)
            ?? (papers[^1], SheetPlan.Of(papers[^1], matter), new(design, strip, SheetPlan.Of(papers[^1], matter).Picture));
        string slug = FileSlugs.Of(design.Strips.Strips.Select(s => s.Form.Strip.Name))[index];
        SheetBuilder sheet = new(new($"strip-{slug}", $"Strip {strip.Form.Strip.Name}: {design.Brief.Title}", words.Description()), size);
        TitleBlock block = SheetWordsOf.TitleBlock(design, $"Strip: {strip.Form.Strip.Name}", "Part drawing", views.Scale) with { Projection = Projection.FirstAngle };
        SheetFrame.Draw(sheet, (number ?? SheetNumber.Single).On(block));
        if (plan.Draw(sheet, matter) is > 0 and int missing)
        {
            sheet.Warn(Invariant.Text($"The drawing of strip '{strip.Form.Strip.Name}' lacks {missing} rows of its tables; report.json has all figures."));
        }

        views.Draw(sheet);
        return sheet.Build();
    }
}

/// <summary>What the sheet of a strip says.</summary>
internal sealed class StripWords(Design design, PlacedStrip strip)
{
    private readonly DrawingNumbers _numbers = new(design.Brief.DrawingUnit);
    private readonly StripForm _form = strip.Form;

    /// <summary>The folds in the order in which they are met from the terminal end.</summary>
    public SheetTable FoldTable() => new(
        [
            new("Fold", TextAlong.End),
            new($"At, {_numbers.UnitSign}", TextAlong.End),
            new("Angle, °", TextAlong.End),
            new("Toward"),
            new($"Inside radius, {_numbers.UnitSign}", TextAlong.End),
            new("Set to, °", TextAlong.End),
            new($"on radius, {_numbers.UnitSign}", TextAlong.End),
            new($"Allowance, {_numbers.UnitSign}", TextAlong.End),
            new("Order", TextAlong.End),
        ],
        [.. _form.Folds.Select((f, i) => (IReadOnlyList<string>)
            [
                DrawingNumbers.Trimmed(i + 1, 0) + (f.IsContact ? " (contact)" : ""),
                _numbers.LengthInColumn(f.AtMm),
                DrawingNumbers.Fixed(Math.Abs(Angles.DegFromRad(f.AngleRad)), 1),
                f.AngleRad > 0 ? "wiper side" : "wheel side",
                _numbers.LengthInColumn(f.RadiusMm),
                DrawingNumbers.Fixed(Math.Abs(Angles.DegFromRad(f.Setting.AngleRad)), 1),
                _numbers.LengthInColumn(f.Setting.ToolRadiusMm),
                _numbers.LengthInColumn(f.AllowanceMm),
                DrawingNumbers.Trimmed(f.Order, 0),
            ])])
    {
        Title = "Folds",
    };

    /// <summary>Force, stress and electrical figures.</summary>
    public SheetTable FigureTable() => new([new("Figure"), new("Value", TextAlong.End)], [.. FigureRows().Select(r => (IReadOnlyList<string>)[r.Name, r.Value])])
    {
        Title = "Spring and electrical figures",
    };

    /// <summary>What a maker must know beside the figures.</summary>
    public NoteBlock Notes()
    {
        List<string> notes =
        [
            $"{_form.Material.Designation}, {_numbers.LengthWithUnit(_form.Strip.ThicknessMm, 3)} thick, {GrainWords}. Blank {_numbers.LengthWithUnit(_form.LengthMm, 3)} long on its centre line.",
            "Fold lines lie at mid-allowance. Positions count from the terminal end, angles are those turned through; set to: what the tool holds so that the fold springs back to its angle and radius. Try one strip first: allowance and springback follow the batch.",
            $"Held in its clamp between the chain lines at {_numbers.Length(_form.Clamp.FromMm)} and {_numbers.LengthWithUnit(_form.Clamp.ToMm)}; the spring begins at the second. Scribe nothing beyond it.",
            "Fold in the order given, from the tip to the terminal end. Seen from the wiper side.",
            "From the side, full line: free of the wheel; chain line: pressed on the copper. Hatched: the surface it lies on; the plate at the contact: the wheel's copper.",
        ];
        Part blank = PartMarks.BlankOf(design, strip);
        notes.AddRange(MakerWords.Of(design, blank));
        notes.AddRange(HazardMarks.Notes(design, blank));
        if (strip.Spring is not null)
        {
            notes.Add($"Force and stress: of the strip as drawn, and in brackets of any strip within {ReadersUnit.Of(design.Brief).Words(FormingWords.Limits(design.Brief.Forming))}, new to worn. Measure the force of the first one.");
        }

        if (_form.Tab is TabDimensions tab)
        {
            notes.Add($"Tab {tab.Size} after IEC 61210: bevel the tip over {_numbers.LengthWithUnit(tab.BevelMm)} on both faces" + (tab.IsHole ? "." : $"; press the dimple {_numbers.Diameter(tab.DetentDiameterMm)} from the back."));
        }

        if (_form.Nose?.Rivet is StripRivet rivet)
        {
            notes.Add($"Contact rivet {_numbers.LengthWithUnit(rivet.HeightMm)} high, dome {_numbers.Radius(rivet.DomeRadiusMm)}, head {_numbers.Diameter(rivet.DiameterMm)}: drill at the cross for its shank and set it before folding.");
        }

        notes.AddRange(StripMarks.Of(design, _form).Missing);
        return new("Notes", notes);
    }

    /// <summary>The sheet in sentences.</summary>
    public string Description()
    {
        string folds = string.Join("; ", _form.Folds.Select(f => $"{Wording.Degrees(Math.Abs(f.AngleRad))} toward the {(f.AngleRad > 0 ? "wiper" : "wheel")} side at {_numbers.LengthWithUnit(f.AtMm)}"));
        string press = strip.Spring is StripSpring s ? $" It presses with {FormingWords.Force(s)}." : "";
        return $"Blank and formed shape of strip {_form.Strip.Name} on net {strip.Net}, {_form.Material.Designation}, {_numbers.LengthWithUnit(_form.LengthMm)} long. Folds: {(folds.Length == 0 ? "none" : folds)}.{press}";
    }

    private string GrainWords => _form.Strip.Grain switch
    {
        StripGrain.Along => "rolling direction along the strip",
        StripGrain.Across => "rolling direction across the strip",
        _ => "rolling direction not stated: radii suit the worse",
    };

    private IEnumerable<(string Name, string Value)> FigureRows()
    {
        if (strip.Spring is StripSpring spring)
        {
            yield return ("Deflection", _numbers.LengthWithUnit(spring.DeflectionMm));
            yield return ("Contact force", FormingWords.Force(spring));
            yield return ("Stiffness", $"{Wording.Number(spring.StiffnessNPerMm, 3)} N/mm");
            yield return ("Largest stress", $"{Wording.Number(spring.StressMpa, 0)} MPa (to {Wording.Number(Math.Ceiling(spring.WorstStressMpa), 0)} MPa)");
            yield return ("Yield over stress", Wording.Number(spring.YieldFactor, 2));
            if (spring.FatigueFactor is double fatigue)
            {
                yield return ("Fatigue over stress", Wording.Number(fatigue, 2));
            }

            if (spring.WindUp is WindUp wind)
            {
                yield return ("Friction winds it", $"{_numbers.Length(wind.LeastMm, 3)} to {_numbers.LengthWithUnit(wind.MostMm, 3)}");
            }

            if (spring.Adjuster is StripAdjuster screw)
            {
                yield return ("Tip per screw turn", _numbers.LengthWithUnit(screw.TipPerTurnMm));
                yield return ("Screw pushes", $"{Wording.Number(screw.ScrewForceN, 2)} N");
            }
        }

        yield return ("Resistance", $"{Wording.Number(strip.Electrics.ResistanceOhm * 1000, 2)} mΩ");
        yield return ("Current", strip.Electrics.CurrentA is double amperes ? $"{Wording.Number(amperes, 3)} A" : "not known");
        yield return ("Warms by about", strip.Electrics.TemperatureRiseK is double rise ? $"{Wording.Number(rise, 2)} K" : strip.Electrics.WarmsBeyondSense ? $"over {Wording.Number(StripElectrics.MostRiseK, 0)} K: melts" : "not known");
        if (strip.Sense is ArmSense sense)
        {
            yield return ("Arm", sense switch { ArmSense.Trailing => "trails", ArmSense.Leading => "leads", _ => "lies across" });
        }
    }
}
