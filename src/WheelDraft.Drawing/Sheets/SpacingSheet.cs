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
        SpacingScene scene = new(design);
        SheetMatter matter = new(SpacingWords.Table(design, places), new("Notes", SpacingWords.Notes(design, places))) { Caution = new(SheetWordsOf.CautionsOf(design)) };
        SpacingPicture? picture = null;
        foreach (PaperSize size in SheetPapers.Of(design, PaperSize.Iso))
        {
            picture = MostDetails(size) ?? picture;
            if (picture is { IsRoomy: true })
            {
                break;
            }
        }

        return (picture ?? On(SheetPapers.Of(design, PaperSize.Iso).Last(), 1)).Draw(number ?? SheetNumber.Single);

        SpacingPicture On(PaperSize size, int rows) => new(scene, places, matter, new(size, rows));

        // Small paper may have no room for a legend with long names, and larger paper has. Details take as many rows as leave the plan its scale.
        SpacingPicture? MostDetails(PaperSize size)
        {
            SpacingPicture? best = null;
            try
            {
                for (int rows = 1; best is null || best.HasMoreDetails; rows++)
                {
                    SpacingPicture next = On(size, rows);
                    if (best is not null && next.Scale.Factor < best.Scale.Factor)
                    {
                        break;
                    }

                    best = next;
                }
            }
            catch (NoRoomException)
            {
                return best;
            }

            return best;
        }
    }
}

/// <summary>A size of paper, and how many rows of details stand on it.</summary>
internal readonly record struct SpacingPaper(PaperSize Size, int DetailRows);

/// <summary>The plan on one size of paper.</summary>
internal sealed class SpacingPicture
{
    // Round the plan, mm on the paper: above and below, and at the sides for leaders.
    private const double AirMm = 4;
    private const double BesideMm = 12;

    // Smaller plans than this hide what they are to show, mm on the paper.
    private const double LeastPlanMm = 65;

    // A longer name of a part stands shortened beside the plan, mm; tables have it whole.
    private const double LongestNameMm = 40;

    // The line of words between details and legend, mm.
    private const double DetailWordsMm = 5;

    private readonly Design _design;
    private readonly SpacingScene _scene;
    private readonly TightPlaces _places;
    private readonly SheetMatter _matter;
    private readonly PaperSize _size;
    private readonly SheetPlan _plan;
    private readonly SpacingDetails _details;
    private readonly Bounds _extent;
    private readonly SheetView _view;
    private readonly ChartLegend _legend;
    private readonly IReadOnlyList<(Point At, string Words)> _named;

    /// <summary>Measures a design's plan on a size of paper.</summary>
    public SpacingPicture(SpacingScene scene, TightPlaces places, SheetMatter matter, SpacingPaper paper)
    {
        _design = scene.Design;
        _scene = scene;
        _places = places;
        _matter = matter;
        _size = paper.Size;
        _plan = SheetPlan.Of(_size, matter);
        _legend = Legend(scene, places, true);
        _named = Named(scene, LongestNameMm);
        _details = SpacingDetails.Of(places, _plan.Picture.Width, paper.DetailRows);
        _extent = ExtentOf(_design);
        string[] words = [.. places.Numbered.Select(p => TightPen.Words(p)), .. _named.Select(n => n.Words)];
        double beside = words.Length == 0 ? AirMm : BesideMm + words.Max(DimensionForm.TextWidthMm);
        Bounds area = Above;
        _view = SheetView.Fitted(_extent, new(area.MinX + beside, area.MinY + AirMm, area.MaxX - beside, area.MaxY - AirMm - NothingMm));
    }

    /// <summary>Scale of the plan.</summary>
    public DrawingScale Scale => _view.Scale;

    /// <summary>Whether a further row would show more details.</summary>
    public bool HasMoreDetails => _details.Shown.Count() < _places.Numbered.Count(p => p.Path.Count > 0);

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

        _legend.Draw(sheet.Group("legend", "Legend", "legend"), new Point(_plan.Picture.MinX, _plan.Picture.MinY + LegendMm), _plan.Picture.Width);
        DrawParts(sheet, _scene, _view);
        DrawPlaces(sheet);
        return sheet.Build();
    }

    private double LegendMm => _legend.HeightMm(_plan.Picture.Width);

    /// <summary>The picture's room above legend and details.</summary>
    private Bounds Above => _plan.Picture with { MinY = DetailsMinY + _details.HeightMm };

    private double DetailsMinY => _plan.Picture.MinY + LegendMm + (_places.Numbered.Count > 0 ? DetailWordsMm : 2);

    /// <summary>Height of the words that stand over the plan where nothing is tight, mm.</summary>
    private double NothingMm => _places.Numbered.Count > 0 ? 0 : (NothingLines().Count * TextStyle.Label.HeightMm * Lettering.LinePitch) + 2;

    private IReadOnlyList<string> NothingLines() => TextFit.Wrap(SpacingWords.Nothing(_places), _plan.Picture.Width - 4, TextStyle.Label);

    /// <summary>Parts of nets that no look tells, each with its name, shortened to a width.</summary>
    public static IReadOnlyList<(Point At, string Words)> Named(SpacingScene scene, double mostMm) =>
        [.. scene.Parts.Where(p => scene.Looks.IsNamed(p.Net)).Select(p => (p.NamedAt, TextFit.Shortened(string.Equals(p.Name, p.Net, StringComparison.Ordinal) ? p.Name : $"{p.Name} ({p.Net})", mostMm, DimensionForm.TextStyle)))];

    /// <summary>What the plan shows, model mm.</summary>
    public static Bounds ExtentOf(Design design)
    {
        double wheel = Math.Max(design.Wheel.OuterDiameterMm, design.Brief.Carrier.DiameterMm ?? 0) / 2;
        Bounds all = new(-wheel, -wheel, wheel, wheel);
        return design.Solids.Select(s => s.Outline.Bounds)
            .Concat(design.Brief.Surfaces.Select(s => s.Outline?.Bounds).OfType<Bounds>())
            .Aggregate(all, (a, b) => a.With(b));
    }

    /// <summary>What looks and lines of the plan mean.</summary>
    /// <param name="scene">What is shown.</param>
    /// <param name="places">What is numbered.</param>
    /// <param name="withPlaces">Whether lines of the numbered distances are explained too.</param>
    public static ChartLegend Legend(SpacingScene scene, TightPlaces places, bool withPlaces) => new(
    [
        .. scene.Nets.Select(n => new LegendEntry(scene.Looks.Words(n), scene.Looks.FillOf(n), LineStyle.Thin)),
        .. If(scene.Design.Wheel.Feed is null, new("land", Fill.Of(FillKind.Copper), LineStyle.Thin)),
        .. If(scene.Parts.Any(p => p.Kind == SolidKind.Floating), new("floating metal", Fill.Of(FillKind.Part), LineStyle.Thin)),
        new("carrier and other insulation", Fill.Of(FillKind.Carrier), LineStyle.Thin),
        .. If(withPlaces && places.Numbered.Any(p => p.Path.Count > 0), new("shortest gap or path", null, TightPen.PathStyle)),
        .. If(withPlaces && places.Numbered.Any(p => p.RequiredMm is not null), new("required, round its first point", null, TightPen.RequiredStyle)),
        .. If(scene.Hidden.Any(), new("under the carrier", null, LineStyle.Hidden)),
        .. If(withPlaces && places.Numbered.Any(p => p.Turning.Count > 0), new("wheel or strip as it stands there", null, LineStyle.Phantom)),
    ]);

    private static IEnumerable<LegendEntry> If(bool isThere, LegendEntry entry) => isThere ? [entry] : [];

    /// <summary>Insulation and conductive parts, the lowest first; what lies under the carrier shows through as hidden edges.</summary>
    public static void DrawParts(SheetBuilder sheet, SpacingScene scene, SheetView view)
    {
        GroupPen all = sheet.Group("parts", "Insulation and conductive parts at home, the lowest first", "parts");
        for (int i = 0; i < scene.All.Count; i++)
        {
            DrawPart(all.Group(Invariant.Text($"part-{i + 1}"), scene.All[i].Name, "part").In(view), scene.All[i]);
        }

        ViewPen hidden = sheet.Group("hidden", "What lies under the carrier", "hidden").In(view);
        foreach (Outline shape in scene.Hidden.SelectMany(p => p.Shapes))
        {
            hidden.Line(shape.Outer, LineStyle.Hidden);
        }
    }

    private static void DrawPart(ViewPen pen, SpacingPart part)
    {
        foreach (Outline shape in part.Shapes)
        {
            pen.Area(shape, part.Look, part.IsInsulation ? LineStyle.Thin : LineStyle.Edge);
            pen.Pen.Texts.TakeEdges(shape.Placed(pen.View.ToPaper).Pieces);
        }

        foreach (Piece mark in part.Marks)
        {
            pen.Line([mark], LineStyle.Thin);
        }

        foreach (Piece wall in part.Walls)
        {
            pen.Line([wall], LineStyle.Edge);
        }
    }

    private void DrawPlaces(SheetBuilder sheet)
    {
        TightPen pen = new(sheet, _view);
        foreach (TightPlace place in _places.Numbered)
        {
            pen.Draw(place);
        }

        _details.Draw(sheet, _scene, new Point(_plan.Picture.MinX, DetailsMinY));
        if (_places.Numbered.Count == 0)
        {
            DrawNothing(sheet);
        }
        else
        {
            sheet.Group("detail-words", "Which details are shown", "words")
                .Text(TextFit.Shortened(_details.Words(_places), _plan.Picture.Width, TextStyle.Small), new(new(_plan.Picture.MinX, DetailsMinY - (DetailWordsMm / 2)), TextAlong.Start, TextAcross.Middle), TextStyle.Small);
        }

        if (_places.Numbered.Count + _named.Count > 0)
        {
            pen.DrawNumbers(_places.Numbered, _named, _view.Of(_extent), Above);
        }

        pen.DrawCircles(_details.Shown);
    }

    private void DrawNothing(SheetBuilder sheet)
    {
        GroupPen words = sheet.Group("none", "Nothing is tight", "empty");
        IReadOnlyList<string> lines = NothingLines();
        for (int i = 0; i < lines.Count; i++)
        {
            words.Text(lines[i], new(new(_plan.Picture.Centre.X, _plan.Picture.MaxY - 1 - (i * TextStyle.Label.HeightMm * Lettering.LinePitch)), TextAlong.Middle, TextAcross.Top), TextStyle.Label);
        }
    }
}
