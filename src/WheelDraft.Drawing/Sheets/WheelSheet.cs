using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

// The chapter "Sheets": what each drawing of a design shows. Each sheet takes a Design and gives a Sheet; how it is written
// is the business of WheelDraft.Formats, and nothing is worked out here that a report would need too.

/// <summary>The wheel, dimensioned: copper, windows, rings, stations, and every edge in a table.</summary>
public static class WheelSheet
{
    // Air round the wheel for leaders and their texts, mm on the paper at either side and above and below.
    private const double CalloutSideMm = 34;
    private const double CalloutAboveMm = 12;

    private const double NotesWidthMm = 84;

    /// <summary>Draws it on the smallest sheet on which everything finds room.</summary>
    public static Sheet Of(Design design)
    {
        ArgumentNullException.ThrowIfNull(design);
        Sheet? last = null;
        foreach (PaperSize size in PaperSize.Iso)
        {
            (last, bool complete) = new Draughtsman(design, size).Draw();
            if (complete)
            {
                return last;
            }
        }

        return last!;
    }

    private sealed class Draughtsman(Design design, PaperSize size)
    {
        private readonly WheelLayout _wheel = design.Wheel;
        private readonly DrawingNumbers _numbers = new(design.Brief.DrawingUnit);
        private readonly SheetBuilder _sheet = new(new SheetWords("wheel", $"Contact wheel: {design.Brief.Title}", Description(design)), size);

        private bool IsUpright => size.HeightMm > size.WidthMm;

        public (Sheet Sheet, bool Complete) Draw()
        {
            SheetTable table = EdgeTable();
            DrawingScale scale = DrawingScale.Fitting(new Bounds(0, 0, _wheel.OuterDiameterMm, _wheel.OuterDiameterMm), ViewRoom(SheetFrame.SpaceOf(size), table));
            Bounds space = SheetFrame.Draw(_sheet, SheetWordsOf.TitleBlock(design, "Contact wheel", "Part drawing", scale));
            Bounds room = ViewRoom(space, table);
            SheetView view = SheetView.Fitted(_wheel.Extent, new Bounds(room.MinX + CalloutSideMm, room.MinY + CalloutAboveMm, room.MaxX - CalloutSideMm, room.MaxY - CalloutAboveMm));
            Wheel(view);
            Dimensions(view, room);
            bool complete = Table(table, space, room) & Notes(space, room);
            return (_sheet.Build(), complete);
        }

        private Bounds ViewRoom(Bounds space, SheetTable table) => IsUpright
            ? new(space.MinX, space.MinY + Math.Min(space.Height / 2, table.HeightMm(space.Width) + NotesHeight(space.Width / 2) + 10), space.MaxX, space.MaxY)
            : new(space.MinX, space.MinY, space.MaxX - Math.Min(space.Width / 2, Math.Max(table.NaturalWidthMm, NotesWidthMm) + 6), space.MaxY);

        private double NotesHeight(double widthMm) => Math.Max(NoteWords().HeightMm(widthMm - 3), CautionWords().HeightMm(widthMm - 3));

        private bool Table(SheetTable table, Bounds space, Bounds room)
        {
            GroupPen pen = _sheet.Group("edges", "Rings and edges", "table");
            Bounds area = IsUpright
                ? new(space.MinX, space.MinY + NotesHeight(space.Width / 2) + 4, space.MaxX, room.MinY - 2)
                : new(room.MaxX + 6, space.MinY + NotesHeight(NotesWidthMm) + CautionWords().HeightMm(NotesWidthMm) + 8, space.MaxX, space.MaxY);
            return table.DrawSideBySide(pen, area) == table.Rows.Count;
        }

        private bool Notes(Bounds space, Bounds room)
        {
            GroupPen pen = _sheet.Group("notes", "Notes and cautions", "notes");
            if (IsUpright)
            {
                double half = space.Width / 2;
                double top = space.MinY + NotesHeight(half);
                Bounds notes = NoteWords().Draw(pen, new Point(space.MinX, top), half - 3);
                Bounds caution = CautionWords().Draw(pen, new Point(space.MinX + half + 3, top), half - 3);
                return Math.Min(notes.MinY, caution.MinY) >= space.MinY - 3;
            }

            Bounds written = NoteWords().Draw(pen, new Point(room.MaxX + 6, space.MinY + NotesHeight(NotesWidthMm) + CautionWords().HeightMm(NotesWidthMm) + 4), NotesWidthMm);
            CautionWords().Draw(pen, new Point(room.MaxX + 6, written.MinY - 3), NotesWidthMm);
            return true;
        }

        private void Wheel(SheetView view)
        {
            Bounds onPaper = view.Of(_wheel.Extent);
            double carrier = (design.Brief.Carrier.DiameterMm ?? _wheel.OuterDiameterMm) / 2;
            if (carrier * 2 * view.Scale.Factor <= onPaper.Width + CalloutSideMm)
            {
                _sheet.Group("carrier", "Carrier", "carrier").In(view).Area(new Outline(Contour.Circle(Point.Origin, carrier), [_wheel.Bore]), Fill.Of(FillKind.Carrier), LineStyle.Thin);
            }

            ViewPen copper = _sheet.Group("copper", "Copper", "copper").In(view);
            foreach (CopperPiece piece in _wheel.Copper)
            {
                copper.Area(piece.Outline, Fill.Of(FillKind.Copper), LineStyle.Edge);
            }

            ViewPen paths = _sheet.Group("paths", "Ring radii", "rings").In(view);
            foreach (RingLayout ring in _wheel.AllRings)
            {
                paths.Line(Contour.Circle(Point.Origin, ring.RadiusMm), LineStyle.Centre);
            }

            ViewPen axes = _sheet.Group("axes", "Centre lines", "axes").In(view);
            axes.CentreCross(Point.Origin, _wheel.OuterDiameterMm / 2);
            if (_wheel.PitchCircleMm is double pitch)
            {
                axes.Line(Contour.Circle(Point.Origin, pitch / 2), LineStyle.Centre);
            }

            ViewPen marks = _sheet.Group("marks", "Home mark and direction", "marks").In(view);
            foreach (IReadOnlyList<Piece> mark in WheelMarks.Of(design).Strokes)
            {
                marks.Line(mark, LineStyle.Thin);
            }

            ViewPen wipers = _sheet.Group("wipers", "Contact patches at home", "wipers").In(view);
            foreach (RingLayout ring in _wheel.AllRings)
            {
                wipers.Area(ring.Patch.At(ring.RadiusMm, ring.StationRad), Fill.Solid(Ink.Accent), LineStyle.Thin);
                if (ring.Return is ReturnWiper other)
                {
                    wipers.Area(other.Patch.At(ring.RadiusMm, other.StationRad), Fill.Solid(Ink.Accent), LineStyle.Thin);
                }
            }
        }

        private void Dimensions(SheetView view, Bounds room)
        {
            Point centre = view.Of(Point.Origin);
            GroupPen pen = _sheet.Group("dimensions", "Dimensions", "dimensions");
            CalloutRing callouts = new(view.Of(_wheel.Extent).Grown(4), room);
            List<RingCallout> texts = [.. Callouts(view)];
            if (!callouts.TryDraw(pen, texts))
            {
                callouts.TryDraw(pen, [.. texts.Take(callouts.Capacity)]);
            }

            DimensionPen dimensions = new(pen);
            double outer = view.OnPaperMm(_wheel.OuterDiameterMm / 2);
            dimensions.Add(new LinearDimension(centre - new Vector(outer, 0), centre + new Vector(outer, 0), outer + 8, _numbers.Diameter(_wheel.OuterDiameterMm)) { Direction = LinearDirection.Level, Subject = "outer diameter" });
            if (dimensions.Table() is SheetTable rest)
            {
                rest.Draw(pen, new Bounds(room.MinX, room.MinY, room.MinX + rest.NaturalWidthMm, room.MinY + rest.HeightMm(rest.NaturalWidthMm)));
            }
        }

        /// <summary>Bore, fixings, wipers, and the edges as long as there is room for them; the table has them all.</summary>
        private IEnumerable<RingCallout> Callouts(SheetView view)
        {
            BoreBrief bore = design.Brief.Wheel.Bore;
            string boreText = _numbers.Diameter(bore.DiameterMm) + (bore.FlatMm is double flat ? $", flat {_numbers.Length(flat)}" : "");
            yield return new(view.Of(Point.Polar(bore.DiameterMm / 2, Angles.RadFromDeg(200))), boreText);
            if (_wheel.Fixings.Count > 0)
            {
                yield return new(view.Of(_wheel.Fixings[0]), $"{DrawingNumbers.Trimmed(_wheel.Fixings.Count, 0)} × {_numbers.Diameter(design.Brief.Wheel.Fixings!.DiameterMm)} on {_numbers.Diameter(_wheel.PitchCircleMm!.Value)}");
            }

            foreach (RingLayout ring in _wheel.AllRings)
            {
                yield return new(view.Of(Point.Polar(ring.RadiusMm, ring.StationRad)), $"{(ring.IsFeed ? "feed" : ring.Name)} at {DrawingNumbers.Angle(ring.StationRad)}");
                if (ring.Return is ReturnWiper other)
                {
                    yield return new(view.Of(Point.Polar(ring.RadiusMm, other.StationRad)), $"{ring.Name}, {other.Net} at {DrawingNumbers.Angle(other.StationRad)}");
                }
            }

            foreach (RingLayout ring in _wheel.Rings)
            {
                foreach (RingPeriod period in ring.Periods)
                {
                    foreach ((double at, string what) in new[] { (period.CopperRad.StartRad, "from"), (period.CopperRad.EndRad, "to") })
                    {
                        yield return new(view.Of(Point.Polar(ring.RadiusMm, at)), $"{ring.Name} {what} {DrawingNumbers.Angle(Angles.InTurn(at), 3)}");
                    }
                }
            }
        }

        private SheetTable EdgeTable() => new(
            [
                new("Ring"),
                new($"Radius, {_numbers.UnitSign}", TextAlong.End),
                new($"{(_wheel.Feed is null ? "Lands" : "Windows")}, {_numbers.UnitSign}", TextAlong.End),
                new("Copper from, °", TextAlong.End),
                new("to, °", TextAlong.End),
                new("Makes, s", TextAlong.End),
                new("Breaks, s", TextAlong.End),
            ],
            [.. _wheel.AllRings.SelectMany(Rows)]);

        private IEnumerable<IReadOnlyList<string>> Rows(RingLayout ring)
        {
            string name = ring.IsFeed ? $"feed ({ring.Net})" : ring.Name;
            string radius = _numbers.LengthInColumn(ring.RadiusMm);
            if (ring.IsWhole)
            {
                yield return [name, radius, "none", "0", "360", "always", "never"];
            }

            foreach (RingPeriod period in ring.Periods)
            {
                yield return
                [
                    name,
                    radius,
                    $"{_numbers.LengthInColumn((ring.WindowFromMm ?? ring.LandFromMm)!.Value)} – {_numbers.LengthInColumn((ring.WindowToMm ?? ring.LandToMm)!.Value)}",
                    DrawingNumbers.AngleInColumn(period.CopperRad.StartRad),
                    DrawingNumbers.AngleInColumn(Angles.InTurn(period.CopperRad.EndRad)),
                    DrawingNumbers.Fixed(design.Motion.SecondsFromRad(period.Wanted.StartRad), 2),
                    DrawingNumbers.Fixed(design.Motion.SecondsFromRad(Angles.InTurn(period.Wanted.EndRad)), 2),
                ];
                name = "";
                radius = "";
            }
        }

        private NoteBlock NoteWords()
        {
            ProcessBrief process = design.Brief.Process;
            List<string> notes =
            [
                $"Seen from the wiper side; the wheel turns {(design.Motion.Direction == Turning.Clockwise ? "clockwise" : "anticlockwise")}, {DrawingNumbers.Trimmed(design.Motion.TurnTimeS, 3)} s a turn.",
                "Angles anticlockwise from the home mark, on the ring radius. Finished sizes, before any kerf.",
                $"Copper {design.Brief.Wheel.Material}, {_numbers.LengthWithUnit(design.Brief.Wheel.ThicknessMm)} thick. Cut edges ±{_numbers.LengthWithUnit(process.ToleranceMm, 3)}; inside corners {_numbers.Radius(process.InsideRadiusMm, 3)}.",
            ];
            notes.AddRange(_wheel.Rings.Where(r => r.Adjust is not null).Select(r =>
                $"'{r.Name}': sloped edge straight from {_numbers.Radius(r.Adjust!.EdgeInner.RadiusMm, 3)} at {DrawingNumbers.Angle(r.Adjust.EdgeInner.ProgrammeRad, 3)} to {_numbers.Radius(r.Adjust.EdgeOuter.RadiusMm, 3)} at {DrawingNumbers.Angle(r.Adjust.EdgeOuter.ProgrammeRad, 3)} of the programme."));
            return new NoteBlock("Notes", notes);
        }

        private static CautionBlock CautionWords() => new([SheetWordsOf.Caution]);
    }

    private static string Description(Design design)
    {
        WheelLayout wheel = design.Wheel;
        string rings = string.Join("; ", wheel.Rings.Select(r => r.IsWhole
            ? $"'{r.Name}' on radius {Wording.Mm(r.RadiusMm)}, a whole ring"
            : $"'{r.Name}' on radius {Wording.Mm(r.RadiusMm)}, copper from {string.Join(" and ", r.Periods.Select(p => $"{Wording.Degrees(p.CopperRad.StartRad)} to {Wording.Degrees(Angles.InTurn(p.CopperRad.EndRad))}"))}"));
        if (wheel.Feed is not RingLayout feed)
        {
            return $"Separate copper lands on a carrier of {Wording.Mm(wheel.OuterDiameterMm)} diameter with a bore of {Wording.Mm(design.Brief.Wheel.Bore.DiameterMm)}, seen from the wiper side; two wipers ride on each ring. "
                + $"Output rings: {rings}. Between lands the carrier is bare.";
        }

        return $"A copper disc of {Wording.Mm(wheel.OuterDiameterMm)} diameter with a bore of {Wording.Mm(design.Brief.Wheel.Bore.DiameterMm)}, seen from the wiper side. "
            + $"Feed ring on radius {Wording.Mm(feed.RadiusMm)}. Output rings from the shaft outwards: {rings}. Windows are cut where a ring is off.";
    }
}
