using System.Collections.Concurrent;
using System.Globalization;
using WheelDraft.Drawing;
using WheelDraft.Engineering;
using Xunit;

namespace WheelDraft.Tests.Sheets;

/// <summary>Names of 40 letters in three scripts on every sheet.</summary>
/// <remarks><c>WHEELDRAFT_LONG_NAME_DESIGNS=200</c> draws that many designs; a usual run fewer.</remarks>
public sealed class LongNamesTests
{
    private const int Letters = 40;

    private static readonly string[] Bases =
    [
        "Umwälzpumpenvorlauftemperaturüberwachungsschaltkontakt",
        "Αντλία κυκλοφορίας δευτερεύουσας δεξαμενής θερμοκηπίου",
        "第二温室循环水泵与雾化阀联锁控制接点及其备用回路的主要开关第二温室循环水泵与雾化阀联锁控制接点及其备用回路的主要开关",
    ];

    private static int Designs => int.Parse(Environment.GetEnvironmentVariable("WHEELDRAFT_LONG_NAME_DESIGNS") ?? "18", CultureInfo.InvariantCulture);

    [Fact]
    public void LongNamesLostTheirLabelsOrOverlapped()
    {
        ConcurrentBag<string> faults = [];
        int built = 0;
        Parallel.For(0, Designs, number =>
        {
            if (DesignOf(number) is not Design design)
            {
                return;
            }

            Interlocked.Increment(ref built);
            List<string> left = [];
            SheetOptions state = new() { Moment = design.Circuit.At(number, 0) };
            foreach (Sheet sheet in DesignSheets.Of(design, state, left.Add))
            {
                foreach (string fault in Faults(design, sheet))
                {
                    faults.Add(FormattableString.Invariant($"design {number}: {sheet.Words.Name}: {fault}"));
                }
            }

            left.ForEach(l => faults.Add(FormattableString.Invariant($"design {number}: {l}")));
        });
        Assert.InRange(built, Designs / 3, Designs);
        Assert.True(faults.IsEmpty, string.Join('\n', faults.Order(StringComparer.Ordinal).Take(60)) + FormattableString.Invariant($"\n{faults.Count} faults in {built} designs"));
    }

    private static IEnumerable<string> Faults(Design design, Sheet sheet)
    {
        // What is told on the sheet or beside it, blanks and hyphens apart: a name over several lines is one.
        string told = Bare(string.Concat(sheet.Texts.Select(t => t.Text)) + string.Concat(sheet.Warnings));
        IEnumerable<string> named = sheet.Words.Name is "timing" or "circuit" or "moment" or "wheel" ? design.Wheel.Rings.Select(r => r.Name) : [];
        return
        [
            .. SheetAudit.OverlappingTexts(sheet).Select(p => $"'{p.First.Text}' overlaps '{p.Second.Text}'"),
            .. SheetAudit.TextsOffPaper(sheet).Select(t => $"'{t.Text}' leaves the paper"),
            .. named.Where(n => !told.Contains(Bare(n), StringComparison.Ordinal)).Select(n => $"'{n}' is nowhere"),
        ];
    }

    private static string Bare(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c) && c != '-'));

    internal static Design? DesignOf(int number)
    {
        try
        {
            return Design.Of(SheetDesigns.Numbered(number, i => NameOf(Bases[number % Bases.Length], i)));
        }
        catch (DesignRefusedException)
        {
            return null;
        }
    }

    private static string NameOf(string words, int index)
    {
        string number = (index + 1).ToString(CultureInfo.InvariantCulture);
        return words[..(Letters - number.Length)].TrimEnd() + number;
    }
}
