using System.Globalization;
using System.Text;
using WheelDraft.Engineering;

namespace WheelDraft.Formats.BenchLog;

/// <summary>What stands in a column.</summary>
internal enum LogColumn
{
    /// <summary>Nothing of use: a number of the row, a date, a remark.</summary>
    Passed,

    /// <summary>The time.</summary>
    Time,

    /// <summary>A contact as 0 or 1, or a word.</summary>
    State,

    /// <summary>A contact as volts.</summary>
    Volts,
}

/// <summary>How a log is laid out, found from its beginning.</summary>
internal sealed record LogLayout
{
    private static readonly string[] TimeWords = ["time", "t", "elapsed", "elapsed time", "timestamp", "time stamp", "seconds", "clock", "clock time"];
    private static readonly string[] PassedWords = ["", "no", "no.", "nr", "nr.", "n", "#", "index", "sample", "record", "row", "scan", "date", "marker", "mark", "note", "notes", "comment", "remark", "battery", "status"];
    private static readonly string[] NameWords = ["channel", "signal", "name", "line", "input", "output"];
    private static readonly string[] ValueWords = ["state", "value", "level", "edge"];

    /// <summary>Between cells.</summary>
    public required byte Separator { get; init; }

    /// <summary>Before decimals.</summary>
    public required byte Mark { get; init; }

    /// <summary>Names of the columns without their units.</summary>
    public required IReadOnlyList<string> Names { get; init; }

    /// <summary>What stands in them.</summary>
    public required IReadOnlyList<LogColumn> Columns { get; init; }

    /// <summary>What a value of each column is multiplied by: to seconds, to volts.</summary>
    public required IReadOnlyList<double> Factors { get; init; }

    /// <summary>Whether times are written hh:mm:ss.</summary>
    public required bool IsClock { get; init; }

    /// <summary>Line of the first row, from 1.</summary>
    public required int FirstLine { get; init; }

    /// <summary>The column with the name of the contact that a row is about; null where every contact has its own column.</summary>
    public int? NamedBy { get; init; }

    /// <summary>What was taken for what.</summary>
    public required IReadOnlyList<string> Taken { get; init; }

    /// <summary>The column of the time.</summary>
    public int Time => Enumerable.Range(0, Columns.Count).First(i => Columns[i] == LogColumn.Time);

    /// <summary>Finds the layout.</summary>
    /// <param name="beginning">The first bytes of the file, or all of it.</param>
    /// <param name="options">What the person says.</param>
    /// <exception cref="DesignRefusedException">It is no table with a header.</exception>
    public static LogLayout Of(ReadOnlySpan<byte> beginning, LogOptions options)
    {
        if (beginning.StartsWith("\u00ff\u00fe"u8) || beginning is [0xff, 0xfe, ..] or [0xfe, 0xff, ..] || beginning.Contains((byte)0))
        {
            throw new DesignRefusedException("log.encoding", "This is no text in UTF-8 or ASCII; save the log as CSV in UTF-8.", new TextPlace(1, 1));
        }

        string text = Encoding.UTF8.GetString(beginning is [0xef, 0xbb, 0xbf, ..] ? beginning[3..] : beginning);
        string[] lines = [.. text.Split('\n').Select(l => l.TrimEnd('\r'))];
        Guess? best = null;
        foreach (char separator in "\t;,")
        {
            Guess guess = Guess.Of(lines, separator);
            best = best is null || guess.Rows > best.Rows ? guess : best;
        }

        return best is { Rows: > 0 } ? Named(best, lines, options) : throw new DesignRefusedException(
            "log.table",
            "No row of a bench log was found: a time and at least one value, parted by commas, semicolons or tabs, under a header such as time_s,mist,fan.",
            new TextPlace(1, 1));
    }

    private static LogLayout Named(Guess guess, string[] lines, LogOptions options)
    {
        List<string> taken = [];
        (string[] names, string[] units) = Header(guess, lines, taken);
        int count = names.Length;
        string[][] rows = [.. lines.Skip(guess.First).Select(l => Cells(l, guess.Separator)).Where(c => c.Length >= count)];
        byte mark = MarkOf(guess.Separator, rows);
        int time = TimeColumn(names, rows[0], taken);
        bool clock = rows[0][time].Contains(':', StringComparison.Ordinal);
        int? namedBy = guess.IsLong ? LongName(names, rows[0], time) : null;
        LogColumn[] columns = new LogColumn[count];
        double[] factors = new double[count];
        for (int i = 0; i < count; i++)
        {
            columns[i] = i == time ? LogColumn.Time : namedBy is int n ? (i == n ? LogColumn.Passed : IsWord(names[i], PassedWords) ? LogColumn.Passed : LogColumn.State) : KindOf(names[i], units[i], rows.Select(r => r[i]));
            factors[i] = columns[i] == LogColumn.Volts && units[i] is "mv" ? 1e-3 : columns[i] == LogColumn.Volts && units[i] is "kv" ? 1e3 : 1;
        }

        factors[time] = clock ? 1 : options.TimeUnitS ?? TimeFactor(names[time], units[time], taken);
        Tell(guess, names, columns, (time, clock, factors[time], mark), taken);
        return new()
        {
            Separator = (byte)guess.Separator,
            Mark = mark,
            Names = names,
            Columns = columns,
            Factors = factors,
            IsClock = clock,
            FirstLine = guess.First + 1,
            NamedBy = namedBy,
            Taken = taken,
        };
    }

    private static void Tell(Guess guess, string[] names, LogColumn[] columns, (int Column, bool IsClock, double Factor, byte Mark) time, List<string> taken)
    {
        string separator = guess.Separator switch { '\t' => "tabs", ';' => "semicolons", _ => "commas" };
        string counted = time.IsClock ? "hours, minutes and seconds" : time.Factor switch { 1 => "seconds", 1e-3 => "milliseconds", 1e-6 => "microseconds", 60 => "minutes", 3600 => "hours", _ => FormattableString.Invariant($"units of {time.Factor:0.######} s") };
        taken.Insert(0, $"cells parted by {separator}{(time.Mark == (byte)',' ? ", decimal comma" : "")}; column '{names[time.Column]}' is the time, in {counted}");
        string[] passed = [.. columns.Select((c, i) => (c, i)).Where(c => c.c == LogColumn.Passed && names[c.i].Length > 0 && !guess.IsLong).Select(c => $"'{names[c.i]}'")];
        if (passed.Length > 0)
        {
            taken.Add($"passed over: {string.Join(", ", passed)}");
        }
    }

    private static (string[] Names, string[] Units) Header(Guess guess, string[] lines, List<string> taken)
    {
        string[]? units = null;
        int width = guess.Width;
        for (int i = guess.First - 1; i >= 0; i--)
        {
            string[] cells = [.. Cells(lines[i].TrimStart('#', '%', ' '), guess.Separator)];
            if (cells.Length < width || cells.All(c => c.Length == 0))
            {
                continue;
            }

            if (units is null && cells.Any(c => UnitOf($"({c.Trim('(', ')', '[', ']')})").Unit.Length > 0) && cells.All(c => c.Length == 0 || IsUnit(c)))
            {
                units = [.. cells.Select(c => c.Trim('(', ')', '[', ']').ToLowerInvariant())];
                continue;
            }

            (string Name, string Unit)[] named = [.. cells.Take(width).Select(UnitOf)];
            if (i > 0)
            {
                taken.Add(FormattableString.Invariant($"line {i + 1} is the header"));
            }

            return ([.. named.Select(n => n.Name)], [.. named.Select((n, c) => n.Unit.Length > 0 ? n.Unit : units is not null && c < units.Length ? units[c] : "")]);
        }

        throw new DesignRefusedException("log.header", "The log has no header: its first line should name the columns, e.g. time_s,mist,fan.", new TextPlace(1, 1));
    }

    private static bool IsUnit(string cell) => cell.Trim('(', ')', '[', ']').ToLowerInvariant() is "s" or "sec" or "ms" or "us" or "µs" or "min" or "h" or "v" or "mv" or "kv" or "logic" or "0/1" or "bool" or "hh:mm:ss" or "hh:mm:ss.fff" or "vac" or "v ac";

    private static readonly string[] KnownUnits = ["s", "sec", "ms", "us", "µs", "min", "h", "v", "mv", "kv", "vac", "v ac"];

    private static (string Name, string Unit) UnitOf(string cell)
    {
        foreach ((char open, char close) in (ReadOnlySpan<(char, char)>)[('(', ')'), ('[', ']')])
        {
            int at = cell.LastIndexOf(open);
            if (at >= 0 && cell.EndsWith(close))
            {
                string inner = cell[(at + 1)..^1].Trim().ToLowerInvariant();
                return KnownUnits.Contains(inner, StringComparer.Ordinal) ? (cell[..at].Trim(), inner) : (cell.Trim(), "");
            }
        }

        int mark = cell.LastIndexOfAny(['_', '/']);
        if (mark > 0 && KnownUnits.Contains(cell[(mark + 1)..].Trim().ToLowerInvariant(), StringComparer.Ordinal))
        {
            return (cell[..mark].Trim(), cell[(mark + 1)..].Trim().ToLowerInvariant());
        }

        return (cell.Trim(), "");
    }

    private static double TimeFactor(string name, string unit, List<string> taken)
    {
        switch (unit)
        {
            case "ms":
                return 1e-3;
            case "us" or "µs":
                return 1e-6;
            case "min":
                return 60;
            case "h":
                return 3600;
            case "s" or "sec":
                return 1;
            default:
                if (!string.Equals(name, "seconds", StringComparison.OrdinalIgnoreCase))
                {
                    taken.Add($"the header gives no unit for '{name}': seconds are taken; else say --time-unit ms");
                }

                return 1;
        }
    }

    private static int TimeColumn(string[] names, string[] row, List<string> taken)
    {
        int named = Array.FindIndex(names, n => IsWord(n, TimeWords));
        if (named >= 0)
        {
            return named;
        }

        int first = Array.FindIndex(row, c => Guess.IsNumber(c) || Guess.IsClock(c));
        taken.Add(FormattableString.Invariant($"no column is called time: column {first + 1}, '{names[first]}', is taken for it"));
        return first;
    }

    private static int LongName(string[] names, string[] row, int time)
    {
        int named = Array.FindIndex(names, n => IsWord(n, NameWords));
        return named >= 0 ? named : Enumerable.Range(0, names.Length).First(i => i != time && !Guess.IsValue(row[i]));
    }

    private static bool IsWord(string name, string[] words) => words.Contains(name.Trim().ToLowerInvariant(), StringComparer.Ordinal);

    private static LogColumn KindOf(string name, string unit, IEnumerable<string> cells) =>
        IsWord(name, PassedWords) ? LogColumn.Passed
        : unit is "v" or "mv" or "kv" or "vac" or "v ac" ? LogColumn.Volts
        : cells.All(c => c is "0" or "1" || c.Length == 0 || !Guess.IsNumber(c)) ? LogColumn.State
        : LogColumn.Volts;

    private static byte MarkOf(char separator, string[][] rows)
    {
        if (separator == ',')
        {
            return (byte)'.';
        }

        bool comma = rows.Any(r => r.Any(c => c.Contains(',', StringComparison.Ordinal) && !c.Contains(':', StringComparison.Ordinal)));
        bool point = rows.Any(r => r.Any(c => c.Contains('.', StringComparison.Ordinal) && !c.Contains(':', StringComparison.Ordinal)));
        return comma && !point ? (byte)',' : (byte)'.';
    }

    /// <summary>A line's cells; an empty one behind the last separator is none.</summary>
    internal static string[] Cells(string line, char separator)
    {
        string[] cells = [.. line.Split(separator).Select(c => c.Trim().Trim('"').Trim())];
        return cells.Length > 1 && cells[^1].Length == 0 ? cells[..^1] : cells;
    }

    /// <summary>How lines look when parted at one character.</summary>
    private sealed record Guess(char Separator, int First, int Rows, int Width, bool IsLong)
    {
        // Enough rows to tell one separator from another, and to see a decimal mark.
        private const int Enough = 2000;

        public static Guess Of(string[] lines, char separator)
        {
            Guess wide = Of(lines, separator, IsRow, isLong: false);
            return wide.Rows > 0 ? wide : Of(lines, separator, IsLongRow, isLong: true);
        }

        public static bool IsNumber(string cell)
        {
            ReadOnlySpan<byte> bytes = Encoding.UTF8.GetBytes(cell);
            return LogCells.TryNumber(bytes, (byte)'.', out _) || LogCells.TryNumber(bytes, (byte)',', out _);
        }

        public static bool IsClock(string cell) => LogCells.TryClock(Encoding.UTF8.GetBytes(cell), out _, out _);

        public static bool IsValue(string cell) => IsNumber(cell) || IsClock(cell) || LogCells.TryState(Encoding.UTF8.GetBytes(cell), out _);

        private static Guess Of(string[] lines, char separator, Func<string[], bool> isRow, bool isLong)
        {
            int first = -1, rows = 0;
            bool alwaysTrails = true;
            Dictionary<int, int> widths = [];
            for (int i = 0; i < lines.Length && rows < Enough; i++)
            {
                string[] cells = Cells(lines[i], separator);
                if (isRow(cells))
                {
                    first = first < 0 ? i : first;
                    rows++;
                    int whole = lines[i].Count(c => c == separator) + 1;
                    alwaysTrails &= whole > cells.Length;
                    widths[whole] = widths.GetValueOrDefault(whole) + 1;
                }
            }

            // A last cell that is empty in every row is none; one that is empty in some lacks a value there.
            return new(separator, first, rows, rows == 0 ? 0 : widths.MaxBy(w => (w.Value, w.Key)).Key - (alwaysTrails ? 1 : 0), isLong);
        }

        private static bool IsRow(string[] cells) =>
            cells.Length >= 2 && cells.Count(IsValue) >= 2 && Array.Exists(cells, c => IsNumber(c) || IsClock(c))
            && cells.All(c => IsValue(c) || LogCells.IsMissing(Encoding.UTF8.GetBytes(c)) || IsDate(c));

        private static bool IsLongRow(string[] cells) => cells.Length == 3 && (IsNumber(cells[0]) || IsClock(cells[0])) && IsValue(cells[2]) && !IsValue(cells[1]);

        private static bool IsDate(string cell) => DateTime.TryParseExact(cell, ["yyyy-MM-dd", "yyyy/MM/dd", "dd.MM.yyyy", "dd/MM/yyyy", "d.M.yyyy"], CultureInfo.InvariantCulture, DateTimeStyles.None, out _);
    }
}
