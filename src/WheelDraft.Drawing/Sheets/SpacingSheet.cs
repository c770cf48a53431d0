using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Where live parts come near each other: a plan of everything conductive, each tight or missing distance numbered.</summary>
internal static class SpacingSheet
{
    /// <summary>Draws it on the smallest sheet on which the plan and the table find room.</summary>
    public static Sheet Of(Design design, SheetNumber? number = null)
    {
        ArgumentNullException.ThrowIfNull(design);
        TightPlaces places = TightPlaces.Of(design);
        SheetMatter matter = new(SpacingWords.Table(design, places), new("Notes", SpacingWords.Notes(design, places))) { Caution = new(SheetWordsOf.CautionsOf(design)) };
        SpacingPicture? picture = null;
        foreach (PaperSize size in PaperSize.Iso)
        {
            picture = On(size) ?? picture;
            if (picture is { IsRoomy: true })
            {
                break;
            }
        }

        return (picture ?? new(design, places, matter, PaperSize.Iso[^1])).Draw(number ?? SheetNumber.Single);

        // Small paper may have no room for a legend with long names, and larger paper has.
        SpacingPicture? On(PaperSize size)
        {
            try
            {
                return new(design, places, matter, size);
            }
            catch (NoRoomException)
            {
                return null;
            }
        }
    }
}

/// <summary>The plan on one size of paper.</summary>
internal sealed class SpacingPicture
{
    // Round the plan, mm on the paper: above and below, and at the sides for leaders.
    private const double AirMm = 4;
    private const double BesideMm = 12;

    // Smaller plans than this hide what they are to show, mm on the paper.
    private const double LeastPlanMm = 65;

    private readonly Design _design;
    private readonly TightPlaces _places;
    private readonly SheetMatter _matter;
    private readonly PaperSize _size;
    private readonly SheetPlan _plan;
    private readonly SpacingDetails _details;
    private readonly Bounds _extent;
    private readonly SheetView _view;
    private readonly IReadOnlyList<SpacingPart> _parts;
    private readonly IReadOnlyList<string> _nets;

    /// <summary>Measures a design's plan on a size of paper.</summary>
    public SpacingPicture(Design design, TightPlaces places, SheetMatter matter, PaperSize size)
    {
        _design = design;
        _places = places;
        _matter = matter;
        _size = size;
        _parts = SpacingPart.Of(design);
        _nets = [.. design.Solids.Where(s => s.Kind != SolidKind.Floating).Select(s => s.Net).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        _plan = SheetPlan.Of(size, matter);
        _details = SpacingDetails.Of(places, _plan.Picture.Width);
        _extent = ExtentOf(design);
        double beside = places.Numbered.Count == 0 ? AirMm : BesideMm + places.Numbered.Max(p => DimensionForm.TextWidthMm(TightPen.Words(p)));
        Bounds area = Above;
        _view = SheetView.Fitted(_extent, new(area.MinX + beside, area.MinY + AirMm, area.MaxX - beside, area.MaxY - AirMm - NothingMm));
    }

    /// <summary>Whether the table is whole and the plan large enough to read.</summary>
    public bool IsRoomy => _plan.IsRoomy && _view.OnPaperMm(Math.Max(_extent.Width, _extent.Height)) >= LeastPlanMm;

    /// <summary>Draws the whole sheet.</summary>
    public Sheet Draw(SheetNumber number)
    {
        SheetBuilder sheet = new(new("spacing", $"Spacing: {_design.Brief.Title}", SpacingWords.Description(_design, _places)), _size);
        SheetFrame.Draw(sheet, number.On(SheetWordsOf.TitleBlock(_design, "Spacing, plan from the wiper side", "Spacing overlay", _view.Scale)));
        int left = _plan.Draw(sheet, _matter);
        if (left > 0)
        {
            sheet.Warn(Invariant.Text($"The table of the spacing drawing lacks its last {left} rows: even this paper is too small; report.md lists all."));
        }

        Legend().Draw(sheet.Group("legend", "Legend", "legend"), new Point(_plan.Picture.MinX, _plan.Picture.MinY + Legend().HeightMm(_plan.Picture.Width)), _plan.Picture.Width);
        DrawParts(sheet);
        DrawPlaces(sheet);
        return sheet.Build();
    }

    /// <summary>The picture's room above legend and details.</summary>
    private Bounds Above => _plan.Picture with { MinY = DetailsMinY + _details.HeightMm };

    private double DetailsMinY => _plan.Picture.MinY + Legend().HeightMm(_plan.Picture.Width) + 2;

    /// <summary>Height of the words that stand over the plan where nothing is tight, mm.</summary>
    private double NothingMm => _places.Numbered.Count > 0 ? 0 : (NothingLines().Count * TextStyle.Label.HeightMm * Lettering.LinePitch) + 2;

    private IReadOnlyList<string> NothingLines() => TextFit.Wrap(SpacingWords.Nothing(_places), _plan.Picture.Width - 4, TextStyle.Label);

    private static Bounds ExtentOf(Design design)
    {
        double wheel = Math.Max(design.Wheel.OuterDiameterMm, design.Brief.Carrier.DiameterMm ?? 0) / 2;
        Bounds all = new(-wheel, -wheel, wheel, wheel);
        return design.Solids.Select(s => s.Outline.Bounds)
            .Concat(design.Brief.Surfaces.Select(s => s.Outline?.Bounds).OfType<Bounds>())
            .Aggregate(all, (a, b) => a.With(b));
    }

    private ChartLegend Legend()
    {
        List<LegendEntry> entries = [.. _nets.Take(Fill.NetLooks).Select((n, i) => new LegendEntry($"net {n}", Fill.Net(i), LineStyle.Thin))];
        if (_design.Solids.Any(s => s.Kind == SolidKind.Floating))
        {
            entries.Add(new("floating metal", Fill.Of(FillKind.Part), LineStyle.Thin));
        }

        entries.Add(new("carrier and other insulation", Fill.Of(FillKind.Carrier), LineStyle.Thin));
        if (_places.Numbered.Any(p => p.Path.Count > 0))
        {
            entries.Add(new("shortest gap or path", null, TightPen.PathStyle));
        }

        if (_places.Numbered.Any(p => p.RequiredMm is not null))
        {
            entries.Add(new("required distance round its first point", null, TightPen.RequiredStyle));
        }

        if (Hidden().Any())
        {
            entries.Add(new("under the carrier", null, LineStyle.Hidden));
        }

        if (_places.Numbered.Any(p => p.Turning.Count > 0))
        {
            entries.Add(new("wheel or strip as it stands there", null, LineStyle.Phantom));
        }

        return new(entries);
    }

    /// <summary>Insulation and conductive parts, the lowest first; what lies under the carrier shows through as hidden edges.</summary>
    private void DrawParts(SheetBuilder sheet)
    {
        GroupPen all = sheet.Group("parts", "Insulation and conductive parts at home, the lowest first", "parts");
        int number = 0;
        foreach ((_, string name, Action<ViewPen> draw) in Surfaces().Concat(Parts()).OrderBy(p => p.TopMm))
        {
            number++;
            draw(all.Group(Invariant.Text($"part-{number}"), name, "part").In(_view));
        }

        ViewPen hidden = sheet.Group("hidden", "What lies under the carrier", "hidden").In(_view);
        foreach (Outline shape in Hidden().SelectMany(p => p.Shapes))
        {
            hidden.Line(shape.Outer, LineStyle.Hidden);
        }
    }

    // Every strip rises beside the carrier: seen whole, though its foot lies lower.
    private IEnumerable<SpacingPart> Hidden() => _parts.Where(p => p.TopMm <= -_design.Brief.Carrier.StepMm - _design.Brief.Carrier.ThicknessMm);

    private IEnumerable<(double TopMm, string Name, Action<ViewPen> Draw)> Surfaces()
    {
        yield return (-_design.Brief.Carrier.StepMm - _design.Brief.Wheel.ThicknessMm, "carrier", pen => pen.Area(_design.Wheel.Carrier, Fill.Of(FillKind.Carrier), LineStyle.Thin));
        foreach (SurfaceBrief surface in _design.Brief.Surfaces)
        {
            yield return (surface.LevelMm, surface.Name, pen => DrawSurface(pen, surface));
        }
    }

    private void DrawSurface(ViewPen pen, SurfaceBrief surface)
    {
        if (surface.Outline is Outline outline)
        {
            pen.Area(outline, Fill.Of(FillKind.Carrier), LineStyle.Thin);
        }

        foreach (IReadOnlyList<Point> path in _design.Brief.Ribs.Where(r => IsOn(r.Surface)).Select(r => r.Path).Concat(_design.Brief.Slots.Where(s => IsOn(s.Surface)).Select(s => s.Path)))
        {
            pen.Pen.Polyline(LineStyle.Edge, [.. path.Select(_view.Of)]);
        }

        bool IsOn(string name) => string.Equals(name, surface.Name, StringComparison.OrdinalIgnoreCase);
    }

    private IEnumerable<(double TopMm, string Name, Action<ViewPen> Draw)> Parts() =>
        _parts.Select(p => (p.TopMm, p.Name, (Action<ViewPen>)(pen => DrawPart(pen, p))));

    private void DrawPart(ViewPen pen, SpacingPart part)
    {
        foreach (Outline shape in part.Shapes)
        {
            pen.Area(shape, FillOf(part), LineStyle.Edge);
        }

        foreach (Piece mark in part.Marks)
        {
            pen.Line([mark], LineStyle.Thin);
        }
    }

    private Fill FillOf(SpacingPart part) => part.Kind == SolidKind.Floating ? Fill.Of(FillKind.Part) : Fill.Net(_nets.IndexOf(part.Net));

    private void DrawPlaces(SheetBuilder sheet)
    {
        TightPen pen = new(sheet, _view);
        foreach (TightPlace place in _places.Numbered)
        {
            pen.Draw(place);
        }

        _details.Draw(sheet, _design, new Point(_plan.Picture.MinX, DetailsMinY));
        if (_places.Numbered.Count > 0)
        {
            pen.DrawNumbers(_places.Numbered, _view.Of(_extent), Above);
        }
        else
        {
            GroupPen words = sheet.Group("none", "Nothing is tight", "empty");
            IReadOnlyList<string> lines = NothingLines();
            for (int i = 0; i < lines.Count; i++)
            {
                words.Text(lines[i], new(new(_plan.Picture.Centre.X, _plan.Picture.MaxY - 1 - (i * TextStyle.Label.HeightMm * Lettering.LinePitch)), TextAlong.Middle, TextAcross.Top), TextStyle.Label);
            }
        }
    }
}

internal static class NetOrder
{
    /// <summary>The place of a net in a list, from 0; after all others when it is not there.</summary>
    public static int IndexOf(this IReadOnlyList<string> nets, string net)
    {
        for (int i = 0; i < nets.Count; i++)
        {
            if (string.Equals(nets[i], net, StringComparison.Ordinal))
            {
                return i;
            }
        }

        return nets.Count;
    }
}
