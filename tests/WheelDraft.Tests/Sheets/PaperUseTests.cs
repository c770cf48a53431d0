using WheelDraft.Cli;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using WheelDraft.Tests.Drawing;
using Xunit;

namespace WheelDraft.Tests.Sheets;

/// <summary>How much of its paper a sheet uses.</summary>
public sealed class PaperUseTests
{
    public static TheoryData<string> Files => [.. SheetDesigns.Demos, .. TemplateShelf.All.Select(t => t.Name)];

    [Theory]
    [MemberData(nameof(Files))]
    public void Of_DemosAndStarters_NoSheetIsMoreThanHalfEmpty(string name)
    {
        // A wheel of 62 mm stood at 1:1 on an A3 that was half empty.
        List<string> empty = [];
        foreach (Sheet sheet in SheetDesigns.Demos.Contains(name, StringComparer.Ordinal) ? Demos.SheetsOf(name) : DesignSheets.Of(DesignOf(name)))
        {
            PaperTests.AssertTidy(sheet);

            // The plan of tight places shares out its paper by itself, not by SheetPlan's ways.
            if (sheet.Words.Name is "spacing")
            {
                continue;
            }

            double share = UsedShare(sheet);
            if (share < 0.5 && (FitsLarger(sheet) || FitsSmaller(sheet)))
            {
                empty.Add(FormattableString.Invariant($"{sheet.Words.Name} {sheet.Size.Name} {share:0.00}"));
            }
        }

        Assert.Empty(empty);
    }

    [Fact]
    public void UsedShare_OfBoxesThatOverlap_CountsWhatTheyCoverTogether() =>
        // Oracle: two squares of 10 that share a quarter cover 175.
        Assert.Equal(175, Union([new(0, 0, 10, 10), new(5, 5, 15, 15)], new(0, 0, 100, 100)), 1e-9);

    private static Design DesignOf(string name) => SheetDesigns.Demos.Contains(name, StringComparer.Ordinal)
        ? SheetDesigns.Demo(name)
        : WheelDraft.Tests.Demos.OfStarter(name);

    /// <summary>The share of the frame's inside that the boxes round a sheet's groups cover.</summary>
    private static double UsedShare(Sheet sheet)
    {
        Bounds space = SheetFrame.SpaceOf(sheet.Size);
        Bounds[] boxes = [.. sheet.Groups.Where(g => g.Id is not "frame").SelectMany(Boxes)];
        return Union(boxes, space) / (space.Width * space.Height);
    }

    // Views are what grows with the scale: everything but words, tables and frame.
    private static Bounds? ViewsOf(Sheet sheet)
    {
        string[] words = ["frame", "title-block", "notes", "table", "legend", "detail", "direction"];
        Bounds[] boxes = [.. sheet.Groups.Where(g => !words.Contains(g.Name.Role, StringComparer.Ordinal)).SelectMany(g => g.Items).Where(i => i is SheetArea).Select(i => i.Bounds)];
        return boxes.Length == 0 ? null : boxes.Aggregate((a, b) => a.With(b));
    }

    // At the next standard scale the views, with what stands beside them now, would still find room. Charts and diagrams have no scale.
    private static bool FitsLarger(Sheet sheet)
    {
        string[] block = [.. sheet.Groups.Single(g => g.Id is "title-block").Items.OfType<SheetText>().Select(t => t.Text)];
        string scale = block[Array.IndexOf(block, "Scale") + 1];
        int at = DrawingScale.Iso.ToList().FindIndex(s => string.Equals(s.ToString(), scale, StringComparison.Ordinal));
        if (at < 1 || ViewsOf(sheet) is not Bounds views)
        {
            return false;
        }

        double ratio = DrawingScale.Iso[at - 1].Factor / DrawingScale.Iso[at].Factor;
        Bounds room = SheetFrame.RoomOf(sheet.Size);
        Bounds[] beside = [.. sheet.Groups.Where(g => g.Name.Role is "notes" or "table").SelectMany(Boxes)];
        double words = Union(beside, room) / (room.Width * room.Height);
        Bounds labels = sheet.Groups.Where(g => g.Name.Role is "dimensions" or "names").SelectMany(g => g.Items).Select(i => i.Bounds).Append(views).Aggregate((a, b) => a.With(b));
        double width = (views.Width * ratio) + labels.Width - views.Width;
        double height = (views.Height * ratio) + labels.Height - views.Height;
        return width <= room.Width && height <= room.Height && (width * height / (room.Width * room.Height)) + words <= 1;
    }

    // All that is drawn would find room on the next smaller paper, were it a puzzle without waste.
    private static bool FitsSmaller(Sheet sheet)
    {
        int at = PaperSize.Iso.ToList().FindIndex(s => string.Equals(s.Name, sheet.Size.Name, StringComparison.Ordinal));
        if (at < 1)
        {
            return false;
        }

        Bounds small = SheetFrame.SpaceOf(PaperSize.Iso[at - 1]);
        Bounds large = SheetFrame.SpaceOf(sheet.Size);
        double used = UsedShare(sheet) * large.Width * large.Height;
        return used <= small.Width * small.Height * 0.95 && sheet.Groups.Where(g => g.Id is not "frame" and not "notes").SelectMany(Boxes).All(b => b.Width <= small.Width && b.Height <= small.Height);
    }

    // Notes and caution stand in one group but apart: each of their items counts by itself.
    private static IEnumerable<Bounds> Boxes(SheetGroup group)
    {
        Bounds[] items = [.. group.Items.Select(i => i.Bounds)];
        return items.Length == 0 ? [] : group.Id is "notes" ? items.Select(i => i.Grown(2.5)) : [items.Aggregate((a, b) => a.With(b))];
    }

    private static double Union(IReadOnlyList<Bounds> boxes, Bounds within)
    {
        double[] xs = [.. boxes.SelectMany(b => new[] { b.MinX, b.MaxX }).Select(x => Math.Clamp(x, within.MinX, within.MaxX)).Distinct().Order()];
        double[] ys = [.. boxes.SelectMany(b => new[] { b.MinY, b.MaxY }).Select(y => Math.Clamp(y, within.MinY, within.MaxY)).Distinct().Order()];
        double area = 0;
        for (int i = 0; i + 1 < xs.Length; i++)
        {
            for (int k = 0; k + 1 < ys.Length; k++)
            {
                Point middle = new((xs[i] + xs[i + 1]) / 2, (ys[k] + ys[k + 1]) / 2);
                area += boxes.Any(b => b.Contains(middle)) ? (xs[i + 1] - xs[i]) * (ys[k + 1] - ys[k]) : 0;
            }
        }

        return area;
    }
}
