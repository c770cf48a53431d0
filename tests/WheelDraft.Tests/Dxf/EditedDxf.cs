using System.Globalization;
using System.Text;
using WheelDraft.Geometry;

namespace WheelDraft.Tests.Dxf;

/// <summary>A DXF file as pairs of code and value, changed as a person or a shop's program may change it.</summary>
internal sealed class EditedDxf
{
    private readonly List<(int Code, string Value)> _pairs = [];

    public EditedDxf(string text)
    {
        string[] lines = text.Split('\n');
        for (int i = 0; i + 1 < lines.Length; i += 2)
        {
            _pairs.Add((int.Parse(lines[i].Trim(), CultureInfo.InvariantCulture), lines[i + 1].TrimEnd('\r')));
        }
    }

    public byte[] Bytes => Encoding.ASCII.GetBytes(string.Concat(_pairs.Select(p => $"{p.Code.ToString(CultureInfo.InvariantCulture)}\n{p.Value}\n")));

    /// <summary>A corner of a polyline: where its x stands among the pairs, its place, its bulge, the next corner.</summary>
    public sealed record Corner(int At, Point Place, double Bulge, Point Next, string Layer);

    public IReadOnlyList<Corner> Corners()
    {
        List<Corner> all = [];
        foreach ((int from, int to) in Entities().Where(e => _pairs[e.From].Value is "LWPOLYLINE" or "POLYLINE"))
        {
            string layer = Layer(from);
            List<(int At, Point Place, double Bulge)> run = [];
            bool heavy = _pairs[from].Value is "POLYLINE";
            bool inVertex = !heavy;
            for (int i = from; i < to; i++)
            {
                inVertex |= _pairs[i] is (0, "VERTEX");
                if (inVertex && _pairs[i].Code == 10)
                {
                    run.Add((i, new(Number(i), Number(i + 1)), 0));
                }
                else if (_pairs[i].Code == 42 && run.Count > 0)
                {
                    run[^1] = run[^1] with { Bulge = Number(i) };
                }
            }

            all.AddRange(run.Select((r, i) => new Corner(r.At, r.Place, r.Bulge, run[(i + 1) % run.Count].Place, layer)));
        }

        return all;
    }

    /// <summary>Entities of a kind on a layer, by the place of their first pair.</summary>
    public IReadOnlyList<int> Of(string layer, params string[] kinds) =>
        [.. Entities().Where(e => kinds.Contains(_pairs[e.From].Value, StringComparer.Ordinal) && string.Equals(Layer(e.From), layer, StringComparison.Ordinal)).Select(e => e.From)];

    public void Move(int at, Vector by)
    {
        Set(at, Number(at) + by.X);
        Set(at + 1, Number(at + 1) + by.Y);
    }

    public void FlipBulge(Corner corner)
    {
        int at = corner.At;
        while (_pairs[at].Code != 42)
        {
            at++;
        }

        Set(at, -Number(at));
    }

    /// <summary>Multiplies every coordinate and radius of the entities.</summary>
    public void Scale(double factor)
    {
        bool inside = false;
        for (int i = 0; i < _pairs.Count; i++)
        {
            inside |= _pairs[i] is (2, "ENTITIES");
            if (inside && _pairs[i].Code is 10 or 20 or 11 or 21 or 40)
            {
                Set(i, Number(i) * factor);
            }
        }
    }

    public bool SetUnits(int insUnits)
    {
        int at = _pairs.FindIndex(p => p is (9, "$INSUNITS"));
        if (at >= 0)
        {
            _pairs[at + 1] = (_pairs[at + 1].Code, insUnits.ToString(CultureInfo.InvariantCulture));
        }

        return at >= 0;
    }

    public void Delete(int from)
    {
        (int start, int end) = Entities().First(e => e.From == from);
        _pairs.RemoveRange(start, end - start);
    }

    public void Change(int from, int code, Func<double, double> to)
    {
        int at = from;
        while (_pairs[at].Code != code)
        {
            at++;
        }

        Set(at, to(Number(at)));
    }

    public void SetLayer(int from, string layer) => _pairs[_pairs.FindIndex(from, p => p.Code == 8)] = (8, layer);

    public void SetText(string old, string text)
    {
        for (int i = 0; i < _pairs.Count; i++)
        {
            _pairs[i] = (_pairs[i].Code, _pairs[i].Value.Replace(old, text, StringComparison.Ordinal));
        }
    }

    private double Number(int at) => double.Parse(_pairs[at].Value, CultureInfo.InvariantCulture);

    private void Set(int at, double value) => _pairs[at] = (_pairs[at].Code, value.ToString("F12", CultureInfo.InvariantCulture));

    private string Layer(int from) => _pairs[_pairs.FindIndex(from, p => p.Code == 8)].Value;

    // A heavy polyline goes on to its SEQEND.
    private List<(int From, int To)> Entities()
    {
        int start = _pairs.FindIndex(p => p is (2, "ENTITIES")) + 1;
        int end = _pairs.FindIndex(start, p => p is (0, "ENDSEC"));
        int[] heads = [.. Enumerable.Range(start, end - start).Where(i => _pairs[i].Code == 0 && _pairs[i].Value is not ("VERTEX" or "SEQEND"))];
        return [.. heads.Select((h, i) => (h, i + 1 < heads.Length ? heads[i + 1] : end))];
    }
}
