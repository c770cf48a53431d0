using System.Globalization;
using System.Text;
using System.Text.Json;
using WheelDraft.Engineering;
using WheelDraft.Formats.BenchLog;
using WheelDraft.Tests.Cli;
using Xunit;

namespace WheelDraft.Tests.Bench;

/// <summary>Logs as instruments write them, read without editing: cases/bench-logs.txt.</summary>
public sealed class LogFormatTests
{
    private static string Folder => Path.Combine(AppContext.BaseDirectory, "cases");

    public static TheoryData<string, string, double> Cases =>
    [
        .. File.ReadLines(Path.Combine(Folder, "bench-logs.txt")).Where(l => l.Length > 0 && l[0] != '#').Select(l => l.Split('|', StringSplitOptions.TrimEntries))
            .Select(c => new TheoryDataRow<string, string, double>(c[0], c[1], double.Parse(c[2], CultureInfo.InvariantCulture))),
    ];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Learn_LogOfAnInstrument_GivesWhatItHolds(string file, string arguments, double toleranceS)
    {
        using CliRun run = new();
        string[] more = arguments.Length == 0 ? [] : [arguments[..arguments.IndexOf(' ', StringComparison.Ordinal)], arguments[(arguments.IndexOf(' ', StringComparison.Ordinal) + 1)..].Trim('"')];
        int status = run.Run(["learn", Path.Combine(Folder, "bench-logs", file), "-o", "learned.toml", "--json", .. more]);
        Assert.True(status == 0, run.Error);
        using JsonDocument json = JsonDocument.Parse(run.Out);
        Assert.Equal(4, json.RootElement.GetProperty("turn_time_s").GetDouble(), toleranceS);
        JsonElement[] outputs = [.. json.RootElement.GetProperty("outputs").EnumerateArray()];
        Assert.Equal(["mist", "fan"], outputs.Select(o => o.GetProperty("output").GetString()!).OrderDescending(StringComparer.Ordinal), StringComparer.Ordinal);
        JsonElement mist = Only(outputs, "mist"), fan = Only(outputs, "fan");
        Assert.Equal(0.8, mist.GetProperty("for_s").GetDouble(), toleranceS);
        Assert.Equal(1.2, fan.GetProperty("for_s").GetDouble(), toleranceS);
        double apart = fan.GetProperty("from_s").GetDouble() - mist.GetProperty("from_s").GetDouble();
        Assert.Equal(1.2, apart - (4 * Math.Floor(apart / 4)), toleranceS + 0.01);
        Assert.NotEmpty(json.RootElement.GetProperty("taken").EnumerateArray());
    }

    [Theory]
    [InlineData("time_s,mist\n0,0\n1,x\n2,1\n", 3, 2, "neither a number nor a word")]
    [InlineData("time_s,mist\n0,0\n1,1\n0.5,0\n", 4, 1, "lies before")]
    [InlineData("time_s,mist\n0,0\n1,1\n2,1,1\n", 4, 1, "more cells")]
    [InlineData("time_s,mist\n0,0.2\n1,230.1\n", 2, 2, "--on-above")]
    [InlineData("time_s,mist\n0,0\n1,1\n2,7\n3,1\n", 2, 2, "--on-above")]
    [InlineData("0,0\n1,1\n", 1, 1, "no header")]
    [InlineData("hello\n", 1, 1, "No row")]
    [InlineData("time_s,mist,mist\n0,0,1\n1,1,1\n", 1, 1, "Two columns")]
    public void Read_WhatCannotBeRead_SaysWhere(string text, int line, int column, string words)
    {
        DesignRefusedException refused = Assert.Throws<DesignRefusedException>(() => Read(text));
        Finding first = refused.Reasons[0];
        Assert.Contains(words, first.Message, StringComparison.Ordinal);
        Assert.Equal(new TextPlace(line, column), first.Where);
    }

    [Fact]
    public void Read_ManyBadLines_AreAllCounted()
    {
        string text = "time_s,mist\n0,0\n1,1\n" + string.Concat(Enumerable.Range(2, 50).Select(i => FormattableString.Invariant($"{i},bad\n"))) + "99,1\n";
        DesignRefusedException refused = Assert.Throws<DesignRefusedException>(() => Read(text));
        Assert.Equal(21, refused.Reasons.Count);
        Assert.Contains("30 more lines", refused.Reasons[^1].Message, StringComparison.Ordinal);
    }

    /// <summary>The plain way through rows and the one cell by cell agree, whatever lies where blocks meet: the oracle is a parser of a few lines.</summary>
    [Fact]
    public void Read_LongLogs_AgreeWithAPlainParser()
    {
        for (int seed = 1; seed <= 3; seed++)
        {
            Random random = new(seed);
            StringBuilder text = new("time_s,a,b\n");
            List<(double Time, bool A, bool B)> rows = [];
            bool a = false, b = false;
            int at = 0;
            for (int i = 0; i < 90_000; i++)
            {
                at += random.NextDouble() < 0.01 ? random.Next(1, 400) : 1;
                a ^= random.NextDouble() < 0.0004;
                b ^= random.NextDouble() < 0.0004;
                rows.Add((at / 1000.0, a, b));
                text.Append((at / 1000.0).ToString(seed == 2 ? "0.000" : "0.###", CultureInfo.InvariantCulture)).Append(a ? ",1" : ",0").Append(b ? ",1\n" : ",0\n");
            }

            BenchRecord record = SyntheticLog.Read(Encoding.ASCII.GetBytes(text.ToString()), new LogOptions { BounceS = 1e-6 }).Record;
            Assert.Equal(rows.Count, record.Rows);
            Assert.Equal(rows[0].Time, record.FromS);
            Assert.Equal(rows[^1].Time, record.ToS, 1e-9);
            Assert.Equal(Makes(rows, r => r.A), record.Contacts[0].Spells.Where(s => s.Make.IsSeen).Select(s => Math.Round(s.Make.AtS, 6)));
            Assert.Equal(Makes(rows, r => r.B), record.Contacts[1].Spells.Where(s => s.Make.IsSeen).Select(s => Math.Round(s.Make.AtS, 6)));
        }
    }

    [Fact]
    public void Read_LineOfNoiseAmongPlainRows_IsNotPassedOver()
    {
        string text = "time_s,mist\n" + string.Concat(Enumerable.Range(1000, 4000).Select(i => i == 3900 ? "39x0,0\n" : FormattableString.Invariant($"{i},0\n")));
        DesignRefusedException refused = Assert.Throws<DesignRefusedException>(() => Read(text));
        Assert.Equal(2902, Assert.Single(refused.Reasons).Where!.Value.Line);
    }

    private static IEnumerable<double> Makes(List<(double Time, bool A, bool B)> rows, Func<(double Time, bool A, bool B), bool> on)
    {
        for (int i = 1; i < rows.Count; i++)
        {
            if (on(rows[i]) && !on(rows[i - 1]))
            {
                yield return Math.Round((rows[i].Time + rows[i - 1].Time) / 2, 6);
            }
        }
    }

    private static LogReading Read(string text) => SyntheticLog.Read(Encoding.UTF8.GetBytes(text), new LogOptions());

    private static JsonElement Only(JsonElement[] outputs, string name) =>
        Assert.Single(outputs.First(o => string.Equals(o.GetProperty("output").GetString(), name, StringComparison.Ordinal)).GetProperty("on").EnumerateArray());
}
