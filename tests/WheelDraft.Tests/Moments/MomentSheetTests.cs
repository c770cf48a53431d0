using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Geometry;
using WheelDraft.Tests.Drawing;
using WheelDraft.Tests.Sheets;
using Xunit;

namespace WheelDraft.Tests.Moments;

public sealed class MomentSheetTests
{
    public static TheoryData<string> Demos => [.. SheetDesigns.Demos];

    [Theory]
    [MemberData(nameof(Demos))]
    public void Of_EveryDemoOverTheTurn_IsTidyAndTagsEveryWiper(string demo)
    {
        Design design = SheetDesigns.Demo(demo);
        for (int i = 0; i < 6; i++)
        {
            CircuitMoment moment = design.Circuit.At(Angles.TurnRad * i / 6, i % (1 << design.Circuit.Inputs.Count));
            Assert.All(WithState(design, new() { Moment = moment, Callouts = (CalloutMarks)(i % 2) }), s =>
            {
                PaperTests.AssertTidy(s);
                Assert.Empty(s.Warnings);
            });
        }
    }

    [Fact]
    public void Film_AllPictures_KeepEveryTextInItsPlace()
    {
        // Only words of states and the clock may change, never where they stand, or a film would jump.
        MomentFilm film = new(SheetDesigns.Demo("propagation-bench"), 24);
        (Point At, TextAlong Along)[] places = Places(film[0]);
        for (int i = 1; i < film.Frames; i++)
        {
            Assert.Equal(places, Places(film[i]));
        }

        static (Point, TextAlong)[] Places(Sheet sheet) => [.. sheet.Texts.Select(t => (t.Place.Anchor, t.Place.Along))];
    }

    [Fact]
    public void Film_WheelInPictures_TurnsByEqualPartsTheRightWay()
    {
        // Oracle: the home mark's tip, read back from the picture, stands at the angle that the motion says.
        foreach (string demo in (string[])["propagation-bench", "kiln-room"])
        {
            Design design = SheetDesigns.Demo(demo);
            MomentFilm film = new(design, 8);
            Point centre = Centre(film[0]);
            double start = AngleOf(film[0]);
            for (int i = 0; i < 8; i++)
            {
                double turned = Angles.Signed(AngleOf(film[i]) - start - (design.Motion.Sigma * Angles.TurnRad * i / 8));
                Assert.Equal(0, turned, 1e-6);
            }

            double AngleOf(Sheet sheet) => (Tip(sheet) - centre).AngleRad;
        }

        static Point Centre(Sheet sheet) => sheet.Groups.Single(g => g.Id is "carrier").Items.Single().Bounds.Centre;
        static Point Tip(Sheet sheet) => sheet.Groups.Single(g => g.Id is "home").Items.OfType<SheetArea>().Single().Shapes[0].Outer.Pieces[0].Start;
    }

    [Theory]
    [InlineData(40, "closed, live", "on")]
    [InlineData(120, "open, at zero", "off")]
    public void Of_FanOfTheBench_TellsItsState(double seconds, string tag, string state)
    {
        // Stir is on from 15 s for 90 s and from 137 s for 30 s, in the demo's own file.
        Design design = SheetDesigns.Demo("propagation-bench");
        Sheet sheet = MomentSheet.Of(design, design.Circuit.At(design.Motion.RadFromSeconds(seconds)));
        Assert.Equal(tag, Below(sheet, "stir"));
        SheetText fan = sheet.Groups.Single(g => g.Id is "rows").Items.OfType<SheetText>().Single(t => t.Text is "fan");
        SheetText told = sheet.Groups.Single(g => g.Id is "rows").Items.OfType<SheetText>().Single(t => t.Place.Anchor.Y == fan.Place.Anchor.Y && !ReferenceEquals(t, fan));
        Assert.Equal(state, told.Text);
        Assert.Contains($"fan {state}", sheet.Words.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_LandUnderItsLiveWiper_IsLive()
    {
        // The heater is on from 20 s in the demo's own file: its land then joins both live wipers.
        Design design = SheetDesigns.Demo("seed-drier");
        Sheet sheet = MomentSheet.Of(design, design.Circuit.At(design.Motion.RadFromSeconds(83)));
        FillKind[] lands = [.. sheet.Groups.Single(g => g.Id is "wheel").Items.OfType<SheetArea>().Select(a => a.Fill.Kind)];
        Assert.Contains(FillKind.Live, lands);
        Assert.Contains(FillKind.Unjoined, lands);
        Assert.DoesNotContain(FillKind.Copper, lands);
    }

    [Fact]
    public void Circuit_AtAMoment_DrawsLiveLinesHeavyAndLoadsLit()
    {
        Design design = SheetDesigns.Demo("propagation-bench");
        SheetOptions at = new() { Moment = design.Circuit.At(design.Motion.RadFromSeconds(40)) };
        Sheet sheet = CircuitSheet.Of(design, null, at);
        Assert.Contains(sheet.Groups.Single(g => g.Id is "leads").Items.OfType<SheetLine>(), l => l.Style.Ink == Ink.Live);
        Assert.Contains(sheet.Groups.Single(g => g.Id is "symbols").Items.OfType<SheetArea>(), a => a.Fill.Kind == FillKind.Lit);
        Assert.DoesNotContain(CircuitSheet.Of(design).Items.OfType<SheetLine>(), l => l.Style.Ink == Ink.Live);
        Assert.Contains(sheet.Texts, t => t.Text is "on, 230 V");
    }

    [Fact]
    public void Timing_AtAMoment_HasItsCursorThere()
    {
        Design design = SheetDesigns.Demo("propagation-bench");
        Sheet sheet = TimingSheet.Of(design, null, new() { Moment = design.Circuit.At(design.Motion.RadFromSeconds(45)) });
        SheetGroup cursor = sheet.Groups.Single(g => g.Id is "moment");
        Assert.Contains(cursor.Items.OfType<SheetText>(), t => t.Text is "45.0 s, 90.0°");

        // A quarter of the way along the axis: half-way between 0 and 90 s, whose labels stand below it.
        double Label(string text) => sheet.Groups.Single(g => g.Id is "axes").Items.OfType<SheetText>().Where(t => string.Equals(t.Text, text, StringComparison.Ordinal)).Max(t => t.Box.Centre.X);
        double x = cursor.Items.OfType<SheetLine>().First().Bounds.Centre.X;
        Assert.Equal((Label("0") + Label("90")) / 2, x, 0.01);
    }

    [Fact]
    public void Callouts_Numbers_EachHasItsLineInTheKey()
    {
        Design design = SheetDesigns.Demo("kiln-room");
        SheetOptions numbers = new() { Callouts = CalloutMarks.Numbers };
        foreach (Sheet sheet in (Sheet[])[WheelSheet.Of(design, null, numbers), AssemblySheet.Of(design, null, numbers)])
        {
            SheetGroup[] callouts = [.. sheet.AllGroups.Where(g => g.Id.StartsWith("callout-", StringComparison.Ordinal))];
            Assert.NotEmpty(callouts);
            string[] key = [.. sheet.Groups.Single(g => g.Name.Title is CalloutKey.Title).Items.OfType<SheetText>().Select(t => t.Text)];
            foreach (SheetGroup callout in callouts)
            {
                string number = callout.Items.OfType<SheetText>().Single().Text;
                Assert.Equal(callout.Name.Title, key[Array.IndexOf(key, number) + 1]);
            }

            // Beside each other, the parts of a key repeat its heading.
            Assert.Equal(callouts.Length, (key.Length / 2) - key.Count(k => k is "No."));
        }
    }

    [Theory]
    [InlineData(0)]
    [InlineData(MomentFilm.MostFrames + 1)]
    public void Film_TooFewOrTooManyPictures_Throws(int frames) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new MomentFilm(SheetDesigns.Demo("kiln-room"), frames));

    /// <summary>The sheets that a moment or numbers change.</summary>
    internal static IEnumerable<Sheet> WithState(Design design, SheetOptions options) =>
    [
        WheelSheet.Of(design, null, options),
        .. AssemblySheet.IsWanted(design) ? [AssemblySheet.Of(design, null, options)] : (Sheet[])[],
        TimingSheet.Of(design, null, options),
        CircuitSheet.Of(design, null, options),
        MomentSheet.Of(design, options.Moment!),
    ];

    private static string Below(Sheet sheet, string name)
    {
        SheetText[] tags = [.. sheet.Groups.Single(g => g.Id is "tags").Items.OfType<SheetText>()];
        return tags[Array.FindIndex(tags, t => string.Equals(t.Text, name, StringComparison.Ordinal)) + 1].Text;
    }
}
