using WheelDraft.Engineering;

namespace WheelDraft.Formats.BenchLog;

/// <summary>Goes through the rows of a log once, at constant memory.</summary>
/// <remarks>Nearly every row of a long log says what the one before it said, a little later: <see cref="PlainRows"/> passes over those. Whatever is not
/// that plain is read cell by cell.</remarks>
internal sealed class LogScan
{
    // So many rows are read cell by cell at the start: their times give the usual step.
    private const int SteppedRows = 2000;

    private const int MostFaults = 20;
    private const double DayS = 86400;

    // Clock times that fall by more than half a day have passed midnight.
    private const double MidnightS = -DayS / 2;

    private readonly LogLayout _layout;
    private readonly LogOptions _options;
    private readonly int _timeColumn;
    private readonly Dictionary<string, int> _byName = new(StringComparer.Ordinal);
    private readonly List<ContactTracker> _trackers = [];
    private readonly List<int> _states = [];

    // The row that last told a contact, where rows after it did not; NaN where the row before did.
    private readonly List<double> _toldS = [];
    private readonly int[] _trackerOf;
    private readonly List<double> _steps = [];
    private readonly List<Finding> _faults = [];
    private PlainRows _plain;
    private double _timeS = double.NaN;
    private double _dayS;
    private double _fromS = double.NaN;
    private long _line;
    private long _changed;
    private long _missing;
    private long _faultCount;
    private bool _alternates;

    public LogScan(LogLayout layout, LogOptions options)
    {
        (_layout, _options, _timeColumn) = (layout, options, layout.Time);
        _trackerOf = new int[layout.Columns.Count];
        for (int i = 0; i < _trackerOf.Length; i++)
        {
            _trackerOf[i] = layout.NamedBy is null && layout.Columns[i] is LogColumn.State or LogColumn.Volts && layout.NamedBy is null ? Tracker(layout.Names[i]) : -1;
        }
    }

    /// <summary>Rows read so far.</summary>
    public long Rows { get; private set; }

    /// <summary>Whole lines of the file, one after another; the last of all may lack its end.</summary>
    /// <param name="block">Bytes up to and with a line end.</param>
    public void Lines(ReadOnlySpan<byte> block)
    {
        int at = 0;
        int before = -1;
        while (at < block.Length)
        {
            if (before >= 0 && _plain.Length > 0)
            {
                at = Plain(block, at, ref before);
            }

            ReadOnlySpan<byte> rest = block[at..];
            int end = rest.IndexOf((byte)'\n');
            int length = end < 0 ? rest.Length : end + 1;
            if (before >= 0 && Rows > 0)
            {
                // The time of the row before, if it was passed over plainly, is read now that it is asked for.
                Recall(block, before);
            }

            before = Row(rest[..length]) ? at : -1;
            at += length;
        }

        if (before >= 0)
        {
            Recall(block, before);
        }
    }

    /// <summary>What the log says.</summary>
    /// <exception cref="DesignRefusedException">Lines that cannot be read, each with its place; or nothing to read.</exception>
    public LogReading Finish()
    {
        if (_faults.Count > 0)
        {
            if (_faultCount > _faults.Count)
            {
                _faults.Add(Finding.Error("log.cell", FormattableString.Invariant($"and {_faultCount - _faults.Count} more lines that cannot be read")));
            }

            throw new DesignRefusedException(_faults);
        }

        if (Rows < 2)
        {
            throw new DesignRefusedException("log.empty", "The log has fewer than two rows; nothing happens in it.");
        }

        // Rows that nearly all change something are a list of changes, whose edges lie at their rows; else edges lie between rows.
        bool changes = _layout.NamedBy is not null || _changed * 2 > Rows;
        _steps.Sort();
        double step = changes || _steps.Count == 0 ? 0 : _steps[_steps.Count / 2];
        foreach (ContactTracker tracker in _trackers)
        {
            tracker.End(_timeS);
        }

        IReadOnlyList<LoggedContact> contacts = ContactTracker.Finish(_trackers, step);
        BenchRecord record = new(contacts, _fromS, _timeS) { StepS = step, BounceS = _options.BounceS, Rows = Rows };
        return new(record, [.. _layout.Taken, .. Told(record, changes)]);
    }

    private IEnumerable<string> Told(BenchRecord record, bool changes)
    {
        yield return changes
            ? FormattableString.Invariant($"{Rows} rows over {record.ToS - record.FromS:0.###} s, a list of changes: an edge is where its row is")
            : FormattableString.Invariant($"{Rows} rows over {record.ToS - record.FromS:0.###} s, one every {record.StepS:0.######} s: an edge is half-way between two rows");
        double due = record.StepS > 0 ? (record.ToS - record.FromS) / record.StepS : 0;
        if (due - Rows > 0.001 * due && due - Rows >= 2)
        {
            yield return FormattableString.Invariant($"about {100 * (due - Rows) / due:0.#} % of the rows are missing");
        }

        if (_missing > 0)
        {
            yield return FormattableString.Invariant($"{_missing} cells without a value: the contact is taken to be as before");
        }

        foreach (LoggedContact contact in record.Contacts.Where(c => c.Joined > 0 || c.Blips > 0))
        {
            yield return FormattableString.Invariant($"'{contact.Name}': {contact.Joined} gaps shorter than {_options.BounceS * 1000:0.###} ms joined{(_alternates ? ", those of an alternating or rectified voltage with them" : " as bounce")}{(contact.Blips > 0 ? FormattableString.Invariant($", {contact.Blips} lone closures shorter than that left out") : "")}");
        }
    }

    private int Tracker(string name)
    {
        if (_byName.TryGetValue(name, out int index))
        {
            throw new DesignRefusedException("log.header", $"Two columns are called '{name}'; give each contact a name of its own.", new TextPlace(Math.Max(1, _layout.FirstLine - 1), 1));
        }

        index = _trackers.Count;
        _byName.Add(name, index);
        _trackers.Add(new(name, _options.BounceS));
        _states.Add(-1);
        _toldS.Add(double.NaN);
        return index;
    }

    // Rows that say the same, a little later; from the first that is not so plain the caller goes on.
    private int Plain(ReadOnlySpan<byte> block, int at, ref int before)
    {
        int to = _plain.Pass(block, at, before);
        if (to > at)
        {
            long rows = (to - at) / _plain.Length;
            Rows += rows;
            _line += rows;
            before = to - _plain.Length;
            _timeS = double.NaN;
        }

        return to;
    }

    private void Recall(ReadOnlySpan<byte> block, int before)
    {
        if (double.IsNaN(_timeS))
        {
            ReadOnlySpan<byte> row = block[before..];
            int cut = row.IndexOf(_layout.Separator);
            TryTime(LogCells.Bare(row[..cut]), out _timeS);
            _timeS += _dayS;
        }
    }

    private bool TryTime(ReadOnlySpan<byte> bare, out double timeS)
    {
        bool read = _layout.IsClock ? LogCells.TryClock(bare, out timeS, out _) : LogCells.TryNumber(bare, _layout.Mark, out timeS);
        timeS *= _layout.Factors[_timeColumn];
        return read;
    }

    private bool Row(ReadOnlySpan<byte> line)
    {
        _line++;
        if (_line < _layout.FirstLine)
        {
            return false;
        }

        ReadOnlySpan<byte> bytes = line.TrimEnd("\r\n"u8);
        if (bytes.Trim(" \t;,"u8).Length == 0)
        {
            return false;
        }

        if (!Cell(bytes, _timeColumn, out ReadOnlySpan<byte> cell, out _) || !TryTime(LogCells.Bare(cell), out double time))
        {
            Fault(1, $"the time '{Shown(LogCells.Bare(cell))}' cannot be read; it is taken to be {(_layout.IsClock ? "hh:mm:ss" : "a number")} as in the rows before");
            return false;
        }

        time += _dayS;
        if (Rows > 0 && time < _timeS && _layout.IsClock && time - _timeS < MidnightS)
        {
            _dayS += DayS;
            time += DayS;
        }

        if (Rows > 0 && time < _timeS)
        {
            Fault(1, FormattableString.Invariant($"the time {time:0.######} s lies before that of the row above, {_timeS:0.######} s; rows must follow each other in time"));
            return false;
        }

        if (Rows == 0)
        {
            _fromS = time;
            _timeS = time;
        }

        if (Rows is > 0 and < SteppedRows)
        {
            _steps.Add(time - _timeS);
        }

        Rows++;
        bool changed = _layout.NamedBy is int namedBy ? LongRow(bytes, namedBy, time) : WideRow(bytes, time);
        _changed += changed ? 1 : 0;
        _timeS = time;
        _plain = Rows < SteppedRows || _timeColumn != 0 || _layout.NamedBy is not null ? default : PlainRows.Like(line, _layout.Separator);
        return true;
    }

    private bool WideRow(ReadOnlySpan<byte> bytes, double time)
    {
        bool changed = false;
        int column = 0;
        ReadOnlySpan<byte> rest = bytes;
        while (true)
        {
            int cut = rest.IndexOf(_layout.Separator);
            ReadOnlySpan<byte> cell = cut < 0 ? rest : rest[..cut];
            if (column < _trackerOf.Length && _trackerOf[column] >= 0)
            {
                changed |= Value(column, _trackerOf[column], cell, time);
            }
            else if (column >= _trackerOf.Length && !LogCells.IsMissing(LogCells.Bare(cell)))
            {
                Fault(1, FormattableString.Invariant($"the row has more cells than the header's {_trackerOf.Length} columns"));
                return changed;
            }

            column++;
            if (cut < 0)
            {
                break;
            }

            rest = rest[(cut + 1)..];
        }

        for (; column < _trackerOf.Length; column++)
        {
            _missing += _trackerOf[column] >= 0 ? 1 : 0;
        }

        return changed;
    }

    private bool LongRow(ReadOnlySpan<byte> bytes, int namedBy, double time)
    {
        if (!Cell(bytes, namedBy, out ReadOnlySpan<byte> name, out _))
        {
            Fault(1, "the row does not say which contact it is about");
            return false;
        }

        string named = Shown(LogCells.Bare(name));
        int tracker = _byName.TryGetValue(named, out int known) ? known : Tracker(named);
        int column = Enumerable.Range(0, _layout.Columns.Count).First(i => _layout.Columns[i] == LogColumn.State);
        return Cell(bytes, column, out ReadOnlySpan<byte> cell, out _) && Value(column, tracker, cell, time);
    }

    private bool Cell(ReadOnlySpan<byte> bytes, int column, out ReadOnlySpan<byte> cell, out int at)
    {
        ReadOnlySpan<byte> rest = bytes;
        at = 0;
        for (int i = 0; ; i++)
        {
            int cut = rest.IndexOf(_layout.Separator);
            if (i == column)
            {
                cell = cut < 0 ? rest : rest[..cut];
                return true;
            }

            if (cut < 0)
            {
                cell = default;
                return false;
            }

            rest = rest[(cut + 1)..];
            at += cut + 1;
        }
    }

    private bool Value(int column, int tracker, ReadOnlySpan<byte> cell, double time)
    {
        bool closed;
        if (cell.Length == 1 && cell[0] is (byte)'0' or (byte)'1' && _layout.Columns[column] == LogColumn.State)
        {
            closed = cell[0] == (byte)'1';
        }
        else
        {
            ReadOnlySpan<byte> bare = LogCells.Bare(cell);
            if (LogCells.IsMissing(bare))
            {
                _missing++;
                _toldS[tracker] = double.IsNaN(_toldS[tracker]) ? _timeS : _toldS[tracker];
                return false;
            }

            if (!Closed(column, bare, out closed))
            {
                return false;
            }
        }

        double before = double.IsNaN(_toldS[tracker]) ? _timeS : _toldS[tracker];
        _toldS[tracker] = double.NaN;
        int state = closed ? 1 : 0;
        if (state == _states[tracker])
        {
            return false;
        }

        if (_states[tracker] < 0 && (_layout.NamedBy is null || time == _fromS))
        {
            _trackers[tracker].Begin(time, closed);
        }
        else if (_states[tracker] < 0)
        {
            // A list of changes names a contact first when it changes: before that it was the other way.
            _trackers[tracker].Begin(_fromS, !closed);
            _trackers[tracker].Change(_timeS, time, closed);
        }
        else
        {
            _trackers[tracker].Change(before, time, closed);
        }

        _states[tracker] = state;
        return Rows > 1;
    }

    private bool Closed(int column, ReadOnlySpan<byte> bare, out bool closed)
    {
        if (LogCells.TryState(bare, out closed))
        {
            return true;
        }

        if (!LogCells.TryNumber(bare, _layout.Mark, out double value))
        {
            Fault(column + 1, $"'{Shown(bare)}' in column '{_layout.Names[column]}' is neither a number nor a word for open or closed");
            return false;
        }

        if (_layout.Columns[column] == LogColumn.Volts)
        {
            if (_options.OnAboveV is not double above)
            {
                if (_faults.Count == 0)
                {
                    Fault(column + 1, FormattableString.Invariant($"column '{_layout.Names[column]}' holds volts, here {value:0.###}; say above how many an output is on, e.g. --on-above \"60 V\""));
                }

                return false;
            }

            _alternates |= value < -above;
            closed = Math.Abs(value) * _layout.Factors[column] > above;
            return true;
        }

        if (value is not (0 or 1))
        {
            Fault(column + 1, FormattableString.Invariant($"{value:0.######} in column '{_layout.Names[column]}', which held 0 and 1 until here; if it holds volts, head it '{_layout.Names[column]} (V)'"));
            return false;
        }

        closed = value == 1;
        return true;
    }

    private void Fault(int column, string message)
    {
        _faultCount++;
        if (_faults.Count < MostFaults)
        {
            _faults.Add(Finding.Error("log.cell", message, new TextPlace((int)Math.Min(_line, int.MaxValue), column)));
        }
    }

    private static string Shown(ReadOnlySpan<byte> bare)
    {
        const int most = 40;
        return System.Text.Encoding.UTF8.GetString(bare.Length > most ? bare[..most] : bare);
    }
}
