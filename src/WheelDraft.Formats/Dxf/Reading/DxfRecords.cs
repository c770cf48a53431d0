using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Dxf.Reading;

/// <summary>Goes through the sections of a file and takes in header, blocks and entities.</summary>
internal sealed class DxfRecords
{
    /// <summary>How many faults are reported; a file of the wrong kind has one a line.</summary>
    private const int MostFaults = 20;

    private static readonly string[] Versions = ["AC1009", "AC1012", "AC1014", "AC1015", "AC1018", "AC1021", "AC1024", "AC1027", "AC1032"];

    private readonly DxfPairs _file;
    private readonly SourceDrawing _drawing = new();
    private readonly List<Finding> _faults = [];
    private DxfPair? _next;

    private DxfRecords(byte[] bytes) => _file = new(bytes);

    internal static SourceDrawing Read(byte[] bytes)
    {
        DxfRecords records = new(bytes);
        records.ReadSections();
        if (records._faults.Count > 0)
        {
            throw new DxfReadException(records._faults);
        }

        return records._drawing;
    }

    private void ReadSections()
    {
        _next = _file.Next();
        bool entities = false;
        while (_next is DxfPair pair)
        {
            if (pair.Code != 0)
            {
                throw new DxfReadException(pair.Line - 1, $"Group {FixedPoint.Short(pair.Code, 0)} stands outside any section: group 0 with SECTION or EOF is needed here. Is this an ASCII DXF file?");
            }

            if (_file.Is(pair, "EOF"u8))
            {
                break;
            }

            if (!_file.Is(pair, "SECTION"u8))
            {
                throw new DxfReadException(pair.Line, $"{Short(_file.Text(pair))} stands outside any section: SECTION or EOF is needed here. Save the drawing again from the program that made it.");
            }

            _next = _file.Next();
            if (_next is not { Code: 2 } name)
            {
                throw new DxfReadException(pair.Line, "A section without a name: group 2 is needed here. Save the drawing again from the program that made it.");
            }

            entities |= _file.Is(name, "ENTITIES"u8);
            _next = _file.Next();
            ReadSection(name);
        }

        if (_next is null)
        {
            throw new DxfReadException(_file.Line, "The file ends without EOF: it is cut short. Save it again, or ask for it anew.");
        }

        if (!entities)
        {
            throw new DxfReadException(null, "The file has no ENTITIES section: there is nothing to read. Save the drawing again, whole.");
        }
    }

    private void ReadSection(DxfPair name)
    {
        if (_file.Is(name, "HEADER"u8))
        {
            ReadHeader();
        }
        else if (_file.Is(name, "BLOCKS"u8))
        {
            ReadBlocks();
        }
        else if (_file.Is(name, "ENTITIES"u8))
        {
            ReadEntities(_drawing.Entities);
        }

        while (_next is DxfPair pair && !(pair.Code == 0 && _file.Is(pair, "ENDSEC"u8)))
        {
            _next = _file.Next();
        }

        if (_next is null)
        {
            throw new DxfReadException(_file.Line, $"The file ends inside section {Short(_file.Text(name))}: it is cut short. Save it again, or ask for it anew.");
        }

        _next = _file.Next();
    }

    private void ReadHeader()
    {
        while (_next is DxfPair pair && pair.Code != 0)
        {
            _next = _file.Next();
            if (pair.Code == 9 && _next is DxfPair value && value.Code is not (0 or 9))
            {
                if (_file.Is(pair, "$ACADVER"u8))
                {
                    TakeVersion(value);
                }
                else if (_file.Is(pair, "$INSUNITS"u8))
                {
                    _drawing.InsUnits = _file.Whole(value);
                }
            }
        }
    }

    private void TakeVersion(DxfPair value)
    {
        string version = _file.Text(value);
        if (!Versions.Contains(version, StringComparer.Ordinal))
        {
            throw new DxfReadException(value.Line, $"Version {Short(version)} is not read: save the drawing as R12 to R2018 ({string.Join(", ", Versions)}).");
        }

        _file.IsUtf8 = string.CompareOrdinal(version, "AC1021") >= 0;
    }

    private void ReadBlocks()
    {
        while (NextRecord() is DxfRecord record)
        {
            if (record.Kind is "BLOCK")
            {
                const int external = 4 | 8;
                SourceBlock block = new(record.Text(2) ?? "", new Point(record.Number(10, 0), record.Number(20, 0)), (record.Whole(70, 0) & external) != 0);
                ReadEntities(block.Entities);
                if (!_drawing.Blocks.TryAdd(block.Name, block))
                {
                    Note(new(record.Line, $"BLOCK: a second block of the name '{Short(block.Name)}'; rename or delete one of them."));
                }
            }
        }
    }

    /// <summary>Entities up to the end of the section or block; that end is left to be read.</summary>
    private void ReadEntities(List<SourceEntity> into)
    {
        while (_next is DxfPair end && !_file.Is(end, "ENDSEC"u8) && !_file.Is(end, "ENDBLK"u8) && NextRecord() is DxfRecord record)
        {
            try
            {
                List<DxfRecord> parts = PartsOf(record);
                if (record.Kind is "TEXT" or "MTEXT")
                {
                    _drawing.Texts.Add(new(record.Layer, (record.Text(3) ?? "") + (record.Text(1) ?? "")));
                }

                into.Add(EntityReader.Read(record, parts));
                into.AddRange(parts.Where(p => p.Kind is "ATTRIB").Select(p => EntityReader.Read(p, [])));
            }
            catch (DxfReadException fault)
            {
                Note(fault);
            }
        }
    }

    /// <summary>The vertices of a polyline or the attributes of a reference, up to their SEQEND.</summary>
    private List<DxfRecord> PartsOf(DxfRecord record)
    {
        List<DxfRecord> parts = [];
        bool follows = record.Kind is "POLYLINE" || (record.Kind is "INSERT" && record.Whole(66, 0) != 0);
        while (follows && _next is DxfPair next && (_file.Is(next, "VERTEX"u8) || _file.Is(next, "ATTRIB"u8)))
        {
            parts.Add(NextRecord()!);
        }

        if (follows)
        {
            if (_next is not DxfPair end || !_file.Is(end, "SEQEND"u8))
            {
                throw new DxfReadException(record.Line, $"{record.Kind}: SEQEND is missing after its parts. Save the drawing again, or draw it anew.");
            }

            NextRecord();
        }

        return parts;
    }

    /// <summary>The record that begins here; null at the end of the section.</summary>
    private DxfRecord? NextRecord()
    {
        if (_next is not DxfPair kind || _file.Is(kind, "ENDSEC"u8))
        {
            return null;
        }

        if (kind.Code != 0)
        {
            throw new DxfReadException(kind.Line - 1, $"Group {FixedPoint.Short(kind.Code, 0)} stands where an entity should begin: group 0 is needed here. Save the drawing again from the program that made it.");
        }

        DxfRecord record = new(_file, kind);
        while ((_next = _file.Next()) is DxfPair pair && pair.Code != 0)
        {
            record.Add(pair);
        }

        return record;
    }

    private void Note(DxfReadException fault)
    {
        _faults.AddRange(fault.Reasons);
        if (_faults.Count >= MostFaults)
        {
            throw new DxfReadException([.. _faults, Finding.Error("drawing.unreadable", "There may be more: reading stopped here. Mend these and try again.")]);
        }
    }

    private static string Short(string text) => text.Length > 40 ? text[..40] + "..." : text;
}
