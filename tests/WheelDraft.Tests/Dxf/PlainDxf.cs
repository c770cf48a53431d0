using System.Globalization;
using Xunit;

namespace WheelDraft.Tests.Dxf;

/// <summary>A reader of DXF for the tests alone; it shares nothing with the writer or the product's own reader.</summary>
/// <remarks>Takes the text apart into pairs, and the ENTITIES section into records. An R12 polyline becomes one record
/// with the codes of its vertices appended.</remarks>
internal sealed class PlainDxf
{
    internal PlainDxf(string text)
    {
        string[] lines = text.Split('\n');
        Assert.Equal("", lines[^1]);
        Assert.Equal(0, (lines.Length - 1) % 2);
        for (int i = 0; i + 1 < lines.Length; i += 2)
        {
            Pairs.Add((int.Parse(lines[i], NumberStyles.AllowLeadingWhite, CultureInfo.InvariantCulture), lines[i + 1]));
        }

        bool inside = false;
        for (int i = 0; i < Pairs.Count; i++)
        {
            (int code, string value) = Pairs[i];
            if (code == 2 && value is "ENTITIES")
            {
                inside = true;
            }
            else if (code == 0 && value is "ENDSEC")
            {
                inside = false;
            }
            else if (inside && code == 0)
            {
                if (value is "VERTEX" or "SEQEND")
                {
                    Closers += value is "SEQEND" ? 1 : 0;
                }
                else
                {
                    Records.Add(new(value));
                }
            }
            else if (inside)
            {
                Records[^1].Codes.Add((code, value));
            }
        }
    }

    internal List<(int Code, string Value)> Pairs { get; } = [];

    internal List<Record> Records { get; } = [];

    internal int Closers { get; }

    internal string Header(string variable)
    {
        int at = Pairs.IndexOf((9, variable));
        Assert.True(at >= 0, $"{variable} is missing");
        return Pairs[at + 1].Value;
    }

    internal sealed record Record(string Kind)
    {
        internal List<(int Code, string Value)> Codes { get; } = [];

        internal string Layer => Codes.First(c => c.Code == 8).Value;

        internal double Number(int code) => double.Parse(Codes.First(c => c.Code == code).Value, CultureInfo.InvariantCulture);

        internal bool IsClosed => Codes.Any(c => c.Code == 70 && c.Value is "1");

        /// <summary>Corners with bulges; the dummy point of an R12 polyline, which comes before group 70, is left out.</summary>
        internal List<(double X, double Y, double Bulge)> Corners()
        {
            List<(double X, double Y, double Bulge)> corners = [];
            foreach ((int code, string value) in Codes.SkipWhile(c => c.Code != 70))
            {
                double number = code is 10 or 20 or 42 ? double.Parse(value, CultureInfo.InvariantCulture) : 0;
                switch (code)
                {
                    case 10:
                        corners.Add((number, 0, 0));
                        break;
                    case 20:
                        corners[^1] = (corners[^1].X, number, 0);
                        break;
                    case 42:
                        corners[^1] = (corners[^1].X, corners[^1].Y, number);
                        break;
                }
            }

            return corners;
        }

        /// <summary>Area inside, by the shoelace formula plus the circular segments of the bulges (closed form).</summary>
        internal double Area()
        {
            List<(double X, double Y, double Bulge)> c = Corners();
            double area = 0;
            for (int i = 0; i < c.Count; i++)
            {
                (double x0, double y0, double b) = c[i];
                (double x1, double y1, _) = c[(i + 1) % c.Count];
                area += ((x0 * y1) - (x1 * y0)) / 2;
                double angle = 4 * Math.Atan(b);
                if (b != 0)
                {
                    double chord = Math.Sqrt(((x1 - x0) * (x1 - x0)) + ((y1 - y0) * (y1 - y0)));
                    double radius = chord / 2 / Math.Sin(Math.Abs(angle) / 2);
                    area += radius * radius * (angle - Math.Sin(angle)) / 2;
                }
            }

            return area;
        }
    }
}
