using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Guide;

/// <summary>Cutting, folding, mounting, wiring: in the order in which the work goes.</summary>
internal sealed class WorkOrder
{
    private readonly Design _design;
    private readonly DrawingNumbers _numbers;
    private readonly IReadOnlyList<PlacedStrip> _strips;

    private WorkOrder(Design design) => (_design, _numbers, _strips) = (design, BuildGuide.Numbers(design), design.Strips.Strips);

    public static GuideChapter Of(Design design) => new WorkOrder(design).Chapter();

    private GuideChapter Chapter() => new("Order of work",
    [
        new GuidePicture("wheel", "The wheel, seen from the wiper side"),
        new GuideList([.. Wheel(), .. Strips(), .. Base(), .. Mounting(), .. Wiring()], IsNumbered: true),
        .. _strips.Count > 0 ? Folds() : [],
        .. _design.Parts.Bases.Select(Holes),
        .. _design.Parts.Bases.Count > 0 ? [new GuidePicture("base", "The base in plan, and the timer from the side")] : (GuideBlock[])[],
        .. _strips.Count > 0 ? [Places(), new GuidePicture("assembly", "Wheel and strips in plan")] : (GuideBlock[])[],
        new GuideTable("Terminals", [new("Terminal"), new("Strip"), new("Wire to net")], [.. Terminals()]),
        new GuidePicture("circuit", "The wiring"),
    ]);

    private IEnumerable<string> Wheel()
    {
        WheelLayout wheel = _design.Wheel;
        string process = _design.Brief.Process.Name is string name ? $" by {name}" : "";
        yield return $"Cut the {(wheel.Feed is null ? "lands" : "wheel")} from {_numbers.LengthWithUnit(_design.Brief.Wheel.ThicknessMm, 3)} {_design.Brief.Wheel.Material}{process}: cut/{_design.Parts.Wheel.CutName}.dxf, or by hand along print/template.pdf, printed at full size and its check lines measured. Outer diameter {_numbers.LengthWithUnit(wheel.OuterDiameterMm)}.";
        if (wheel.Feed is not null && _design.Brief.Wheel.Bore.FlatMm is double flat)
        {
            yield return $"The bore of {_numbers.LengthWithUnit(_design.Brief.Wheel.Bore.DiameterMm)} has a flat, {_numbers.LengthWithUnit(flat)} from the opposite side: cut by hand, drill it under size as the template says and file to the line.";
        }

        if (_design.Parts.Carrier is Part carrier)
        {
            yield return $"Cut the carrier, {_numbers.LengthWithUnit(_design.Brief.Carrier.ThicknessMm, 3)} thick: cut/{carrier.CutName}.dxf.";
        }

        foreach ((Part cam, CamLayout layout) in _design.Parts.Cams.Zip(_design.Cams))
        {
            yield return $"Cut the cam '{cam.Name}' of {cam.Stock.Material}, {_numbers.LengthWithUnit(layout.Brief.ThicknessMm, 3)} thick: cut/{cam.FileName}.dxf, nominal; its edge is what lifts the lever, so file no more than burrs off. {(layout.Brief.Bore is null ? "Its bore is the wheel's, with the index mark where the wheel has its home mark: put both on together, marks in line." : "Its index mark goes in line with the wheel's home mark.")}";
        }

        yield return "Deburr every edge and round none that a wiper crosses: a burr shortens the distance to the next live part, and lifts a wiper.";
        string face = _design.Brief.Carrier.StepMm > 0 ? $"its face {_numbers.LengthWithUnit(_design.Brief.Carrier.StepMm, 3)} proud of the carrier's" : $"its face flush with the carrier's{(wheel.Feed is null ? "" : ", windows filled to the same height")}";
        yield return $"Fix the copper on its carrier, {face}{(wheel.Fixings.Count > 0 ? $", with {Wording.Number(wheel.Fixings.Count, 0)} screws or rivets on a pitch circle of {_numbers.LengthWithUnit(wheel.PitchCircleMm ?? 0)}, no head higher over the face than report.md counts with" : "")}. Every piece of copper must be held for itself: report.md names those that hang by little.";
        yield return $"Turn it past a fixed point: {RunsOut("the face", _design.Brief.Wheel.FaceRunOutMm)}, {RunsOut("the rim", _design.Brief.Wheel.RunOutMm)}.";
    }

    private string RunsOut(string what, double mm) => mm > 0 ? $"{what} may run out by {_numbers.LengthWithUnit(mm, 3)} in all" : $"{what} must run true, no run-out was counted";

    private IEnumerable<string> Strips()
    {
        if (_strips.Count == 0)
        {
            yield break;
        }

        yield return $"Cut the blanks of the strips: {ShoppingList.Names(_design.Parts.Strips.Select(p => $"cut/{p.CutName}.dxf"))}. Mind the rolling direction where the drawing gives one; deburr.";
        if (_strips.Any(s => s.Form.Tab is not null))
        {
            yield return $"File the tips of the tabs to a bevel{(_strips.Any(s => s.Form.Tab is { IsHole: false }) ? ", and press the dimple of each from behind where the template marks it" : "")}.";
        }

        if (_strips.Any(s => s.Form.Nose?.Rivet is not null))
        {
            yield return "Drill the mark at the tip for the shank of the rivet that you have, set the rivet with its dome on the side that will face the wheel, and head it over while the blank is flat.";
        }

        if (_strips.Any(s => s.Form.Folds.Count > 0))
        {
            yield return $"Fold each strip in the order of the table below, over a former of the radius in its column, to the angle beside it: it springs back to angle and radius of the drawing.{(_strips.Any(s => s.Form.Folds.Any(f => f.IsContact)) ? " The outside of the fold that is the contact stays smooth: no tool mark." : "")}";
        }

        if (_strips.Any(s => s.Form.DeflectionMm is not null))
        {
            yield return "Lay each strip's foot on a flat plate and measure how high its contact stands, as the table of places says; bend no arm to mend it, fold a new strip.";
        }
    }

    private IEnumerable<string> Base()
    {
        foreach (BasePlate plate in _design.Parts.Bases)
        {
            string thick = plate.Part.Stock.ThicknessMm is double thickness ? $", {_numbers.LengthWithUnit(thickness, 3)} thick" : "";
            yield return $"Make the base under '{plate.Surface.Name}' of an insulating plate of material group {plate.Surface.Group}{thick}: cut/{plate.Part.CutName}.dxf or the template, holes by the table below, measured from the shaft axis. Positions of strips and clamps are for looking at: scratch or burn no line between live parts, dirt stays in it.{(plate.Holes.Any(h => !string.Equals(h.Name, BasePlates.ShaftName, StringComparison.Ordinal)) ? " A metal screw through a foot is as live as its strip, above the plate and below it, and no distance of it was measured: take insulating pins, or give each screw to the file as a part." : "")}";
        }
    }

    private static string InsulatesWords(CamLayout cam) => cam.Brief.Body?.Net is { } net
        ? $"Lever and roller may be metal: their distances are judged on net '{net}'."
        : "Lever, roller and pin are of what insulates: no distance to them is judged.";

    private string LeverWords(CamLayout cam)
    {
        string contact = cam.Brief.Contact is { } works
            ? $" Set its contact '{works.Input}' to change at a lift of {cam.LiftWords(works.Place)}, {(works.ClosedBelow ? "closed below" : "closed above")}, within {cam.LiftWords(works.Tolerance)}."
            : "";
        string place = cam.Brief.Lever is SwingingLever swing
            ? $"Its lever swings about x {_numbers.Length(swing.Pivot.X)}, y {_numbers.LengthWithUnit(swing.Pivot.Y)}, arm {_numbers.LengthWithUnit(swing.ArmMm)}."
            : $"Its lever slides along {DrawingNumbers.Angle(((SlidingLever)cam.Brief.Lever).DirectionRad)}, {_numbers.LengthWithUnit(((SlidingLever)cam.Brief.Lever).OffsetMm)} beside the axis.";
        return place + contact;
    }

    private IEnumerable<string> Mounting()
    {
        if (_design.Brief.Parts.Any(p => p.Kind == PartKind.Earthed) || _design.Brief.Wheel.Shaft == ShaftKind.Earthed)
        {
            yield return $"Join to the protective conductor, before anything else is wired: {ShoppingList.Names([.. _design.Brief.Parts.Where(p => p.Kind == PartKind.Earthed).Select(p => p.Name), .. _design.Brief.Wheel.Shaft == ShaftKind.Earthed ? ["the shaft"] : (string[])[]])}.";
        }

        foreach (BasePlate plate in _design.Parts.Bases)
        {
            yield return $"Fix the motor so that its shaft stands square to the base, and the wheel on it with its copper face {_numbers.LengthWithUnit(Math.Abs(plate.Surface.LevelMm))} {(plate.Surface.LevelMm < 0 ? "above" : "below")} '{plate.Surface.Name}'.";
        }

        if (_design.Parts.Bases.Count == 0)
        {
            yield return "Fix the wheel square on its shaft.";
        }

        foreach (CamLayout cam in _design.Cams)
        {
            yield return $"Put the cam '{cam.Brief.Name}' on the shaft, its index mark in line with the wheel's home mark, its faces {_numbers.LengthWithUnit(cam.Brief.LowerMm)} and {_numbers.LengthWithUnit(cam.Brief.UpperMm)} over the copper face. {LeverWords(cam)}";
            yield return $"{InsulatesWords(cam)} Turn the wheel by hand once round, dead: the lever must follow the table of draw/{_design.Parts.Cams[cam.Index].FileName}.svg and fall freely.";
        }

        yield return $"At home the wheel's home mark points along the x axis of the drawings, to the station of 0°; from there it turns {SheetWordsOf.Turns(_design)}.";
        if (_strips.Any(s => s.Ring is not null))
        {
            yield return $"Fix the feet of the strips one by one, each contact on its ring at its station, pressed back by the copper as the table of places says.{(_strips.Any(s => s.Sense == ArmSense.Leading) ? " Where an arm leads, the copper comes at its tip: turn the wheel by hand first and see that nothing digs in." : "")}";
        }
        else if (_strips.Count == 0)
        {
            yield return "Fix the wipers, each on its ring radius at its station: the file says nothing of their shape, so nothing here was judged of it.";
        }
    }

    private static IEnumerable<string> Wiring()
    {
        yield return "Wire by the circuit, wires strain-relieved and no bare end longer than its terminal; leave the receptacles off until the test with a meter is done.";
    }

    private IEnumerable<GuideBlock> Folds()
    {
        if (_strips.Any(s => s.Form.Folds.Count > 0))
        {
            yield return new GuideTable(
                "Folds, in the order of folding; places from the terminal end of the flat blank",
                [new("Strip"), new("Order", TextAlong.End), new($"At, {_numbers.UnitSign}", TextAlong.End), new("Set to, °", TextAlong.End), new($"on radius, {_numbers.UnitSign}", TextAlong.End), new("Toward")],
                [.. _strips.SelectMany(s => s.Form.Folds.OrderBy(f => f.Order).Select(f => (IReadOnlyList<string>)
                [
                    s.Form.Strip.Name,
                    Wording.Number(f.Order, 0),
                    _numbers.LengthInColumn(f.AtMm),
                    DrawingNumbers.Fixed(Angles.DegFromRad(Math.Abs(f.Setting.AngleRad)), 1),
                    _numbers.LengthInColumn(f.Setting.ToolRadiusMm),
                    f.AngleRad > 0 ? "wiper side" : "wheel side",
                ]))]);
        }

        foreach (int i in Enumerable.Range(0, _strips.Count))
        {
            yield return new GuidePicture(_design.Parts.Strips[i].FileName, $"Strip '{_strips[i].Form.Strip.Name}'");
        }
    }

    private GuideTable Holes(BasePlate plate) => new(
        $"Holes of the base under '{plate.Surface.Name}', {_numbers.UnitSign} from the shaft axis, x to the station of 0°, y to that of 90°",
        [new("Hole"), new("x", TextAlong.End), new("y", TextAlong.End), new("Diameter", TextAlong.End)],
        [.. plate.Holes.Select(h => (IReadOnlyList<string>)[h.Name, _numbers.LengthInColumn(h.At.X, 2), _numbers.LengthInColumn(h.At.Y, 2), _numbers.LengthInColumn(h.DiameterMm, 2)])]);

    private GuideTable Places() => new(
        "Places of the strips; the free contact stands above the plate that the foot lies on",
        [new("Strip"), new($"Ring radius, {_numbers.UnitSign}", TextAlong.End), new("Station, °", TextAlong.End), new("Approach, °", TextAlong.End), new($"Free contact, {_numbers.UnitSign} above", TextAlong.End), new($"Pressed back by, {_numbers.UnitSign}", TextAlong.End), new("Force")],
        [.. _strips.Select(s => (IReadOnlyList<string>)
        [
            s.Form.Strip.Name,
            s.Ring is RingPlace ring ? _numbers.LengthInColumn(ring.RadiusMm, 2) : "–",
            s.Ring is RingPlace place ? DrawingNumbers.Fixed(Angles.DegFromRad(place.StationRad), 1) : "–",
            DrawingNumbers.Fixed(Angles.DegFromRad(s.Form.Strip.ApproachRad ?? 0), 1),
            s.FreeContact is SpaceVector free ? _numbers.LengthInColumn(free.Z - s.Form.SeatLevelMm, 2) : "–",
            s.Form.DeflectionMm is double back ? _numbers.LengthInColumn(back, 2) : "–",
            s.Spring is StripSpring spring ? FormingWords.Force(spring) : "–",
        ])]);

    // The wipers of the rings, then the strips that ride on none.
    private IEnumerable<IReadOnlyList<string>> Terminals() =>
    [
        .. _design.Wheel.AllRings.SelectMany(r => r.Wipers, (r, w) => (IReadOnlyList<string>)[w.Name, _design.Strips.At(r.RadiusMm, w.StationRad)?.Form.Strip.Name ?? "–", w.Net]),
        .. _strips.Where(s => s.Ring is null).Select(s => (IReadOnlyList<string>)["–", s.Form.Strip.Name, s.Net]),
    ];
}
