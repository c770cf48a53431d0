using System.Globalization;
using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>What an output or the feed says of its contact, to be brought together with what its strip says.</summary>
/// <param name="Who">In words, for messages.</param>
/// <param name="Given">What the output or feed gives.</param>
/// <param name="Brief">The whole brief.</param>
/// <param name="Table">Path of the output's or feed's table.</param>
internal sealed record ContactQuestion(string Who, ContactBrief Given, Brief Brief, string Table)
{
    // Two lengths or angles that a person wrote the same way agree to far better than this; one that differs by as much does not fit.
    private const double SameMm = 1e-6;
    private const double SameRad = 1e-8;

    private readonly List<Finding> _reasons = [];

    /// <summary>Whether a strip is the one.</summary>
    public required Func<StripTask, bool> Serves { get; init; }

    internal StripContact Answer()
    {
        int[] serving = [.. Enumerable.Range(0, Brief.Strips.Count).Where(i => Serves(Brief.Strips[i].Task))];
        if (serving.Length > 1)
        {
            Refuse(string.Create(CultureInfo.InvariantCulture, $"strip[{serving[1]}]"), $"strips \"{Brief.Strips[serving[0]].Name}\" and \"{Brief.Strips[serving[1]].Name}\" both serve {Who}; one wiper has one strip");
        }

        StripContact answer = serving.Length == 0 ? WithoutStrip() : WithStrip(serving[0]);
        return _reasons.Count == 0 ? answer : throw new DesignRefusedException(_reasons);
    }

    private StripContact WithoutStrip()
    {
        if (Given.WidthMm is null)
        {
            Refuse($"{Table}.contact_width", $"{Who} has no strip, so contact_width is missing: the length of its contact along the fold, which decides how wide its ring is; e.g. contact_width = \"2.0 mm\"");
        }

        return new StripContact
        {
            Shape = ContactShape.FoldLine,
            LengthMm = Given.LengthMm,
            WornLengthMm = Math.Max(Given.WornLengthMm, Given.LengthMm),
            WidthMm = Given.WidthMm ?? 0,
            AngleRad = Given.AngleRad ?? 0,
            NoseRadiusMm = Given.NoseRadiusMm,
        };
    }

    private StripContact WithStrip(int index)
    {
        StripBrief strip = Brief.Strips[index];
        string table = string.Create(CultureInfo.InvariantCulture, $"strip[{index}]");
        StripOutlay outlay = StripOutlay.Of(strip, Brief, index, _reasons);
        if (strip.ApproachRad is null)
        {
            Refuse($"{table}.approach", $"strip \"{strip.Name}\" has no approach: the direction from the tip back along the arm, from the outward radial, which decides how its contact lies on the ring; e.g. approach = \"90 deg\"");
        }

        if (outlay.ContactPiece is not int piece)
        {
            Refuse($"{table}.shape", $"strip \"{strip.Name}\" has no contact: a wiper ends in a rivet, e.g. {{ rivet = \"2.2 mm\", radius = \"1.5 mm\", diameter = \"2.5 mm\" }}, or has one bend with contact = true");
            return WithoutStrip();
        }

        double approach = strip.ApproachRad ?? Math.PI / 2;
        StripContact common = WithoutWidth(approach) with { FromStrip = strip.Name };
        return strip.Shape[piece] is StripRivet rivet ? Disc(common, rivet) : Fold(common, outlay, piece);
    }

    private StripContact WithoutWidth(double approachRad) => new()
    {
        Shape = ContactShape.Disc,
        LengthMm = Given.LengthMm,
        WornLengthMm = Math.Max(Given.WornLengthMm, Given.LengthMm),
        WidthMm = Given.LengthMm,
        AngleRad = 0,
        ApproachRad = approachRad,
    };

    private StripContact Disc(StripContact common, StripRivet rivet)
    {
        if (Given.WidthMm is double width)
        {
            Refuse($"{Table}.contact_width", $"the contact of {Who} is a rivet, whose patch is a disc of diameter contact_length = {Given.LengthMm:0.###} mm; leave contact_width = {width:0.###} mm out");
        }

        Same($"{Table}.nose_radius", "nose_radius", Given.NoseRadiusMm, rivet.DomeRadiusMm, "the dome of its rivet");
        double widest = Math.Min(rivet.DiameterMm, 2 * rivet.DomeRadiusMm);
        LengthFits(common, widest, "its rivet's dome");
        return common with { NoseRadiusMm = rivet.DomeRadiusMm };
    }

    private StripContact Fold(StripContact common, StripOutlay outlay, int piece)
    {
        StripBend bend = (StripBend)outlay.Strip.Shape[piece];
        double nose = bend.RadiusMm + outlay.Strip.ThicknessMm;
        double width = outlay.Widths[piece].FromMm;
        double angle = FoldAngle(common.ApproachRad!.Value);
        Same($"{Table}.contact_width", "contact_width", Given.WidthMm, width, $"strip \"{outlay.Strip.Name}\" at its contact fold");
        Same($"{Table}.nose_radius", "nose_radius", Given.NoseRadiusMm, nose, "the outside of its contact fold");
        if (Given.AngleRad is double given && Math.Abs(Math.IEEERemainder(given - angle, Math.PI)) > SameRad)
        {
            Refuse($"{Table}.contact_angle", $"contact_angle of {Who} is {Angles.DegFromRad(given):0.####}° but the approach of its strip gives {Angles.DegFromRad(angle):0.####}° (approach − 90°); leave contact_angle out, or make them the same");
        }

        LengthFits(common, 2 * nose, "its fold");
        return common with { Shape = ContactShape.FoldLine, WidthMm = width, AngleRad = angle, NoseRadiusMm = nose };
    }

    // Approach less a quarter turn, brought into (−90°, 90°]: a fold line has no direction of its own.
    private static double FoldAngle(double approachRad)
    {
        double angle = Math.IEEERemainder(approachRad - (Math.PI / 2), Math.PI);
        return angle <= -Math.PI / 2 ? angle + Math.PI : angle;
    }

    private void LengthFits(StripContact contact, double widestMm, string nose)
    {
        if (contact.WornLengthMm > widestMm)
        {
            bool isNew = contact.LengthMm > widestMm;
            string key = isNew ? "contact_length" : "worn_length";
            double length = isNew ? contact.LengthMm : contact.WornLengthMm;
            Refuse($"{Table}.{key}", $"{key} of {Who} is {length:0.###} mm, more than {nose} is wide ({widestMm:0.###} mm); a shorter patch or a larger radius is needed");
        }
    }

    private void Same(string path, string key, double? given, double found, string where)
    {
        if (given is double g && Math.Abs(g - found) > SameMm)
        {
            Refuse(path, $"{key} of {Who} is {g:0.####} mm but {where} gives {found:0.####} mm; leave {key} out, or make them the same");
        }
    }

    private void Refuse(string path, FormattableString message) =>
        _reasons.Add(Finding.Error("strip.contact", FormattableString.Invariant(message), Brief.PlaceOf(path)));
}
