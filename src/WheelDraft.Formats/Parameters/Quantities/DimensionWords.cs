namespace WheelDraft.Formats.Parameters;

/// <summary>How a dimension is named in messages and in the schema.</summary>
/// <param name="Name">Its name after "a".</param>
/// <param name="Right">A right value.</param>
internal sealed record DimensionWords(string Name, string Right)
{
    /// <summary>The words for a dimension.</summary>
    public static DimensionWords Of(Dimension dimension) => dimension switch
    {
        Dimension.Length => new("length", "0.5 mm"),
        Dimension.Time => new("time", "7 s"),
        Dimension.Angle => new("angle", "12 deg"),
        Dimension.Speed => new("speed", "0.333 rpm"),
        Dimension.Frequency => new("frequency", "50 Hz"),
        Dimension.Voltage => new("voltage", "230 V"),
        Dimension.Current => new("current", "0.5 A"),
        Dimension.Power => new("power", "7 W"),
        Dimension.Resistance => new("resistance", "470 ohm"),
        Dimension.Force => new("force", "0.6 N"),
        Dimension.Torque => new("torque", "0.25 N m"),
        Dimension.Flow => new("flow", "1.2 L/min"),
        Dimension.Volume => new("volume", "110 mL"),
        Dimension.TorqueRate => new("torque by an angle", "0.1 N mm/deg"),
        Dimension.ForceRate => new("force by a length", "0.05 N/mm"),
        Dimension.Inertia => new("moment of inertia", "200 g mm2"),
        Dimension.Mass => new("mass", "5 g"),
        _ => new("share", "1 %"),
    };

    /// <summary>"length", or "time, angle or volume".</summary>
    public static string Names(IReadOnlyList<Dimension> wanted) => Words.Or(wanted.Select(d => Of(d).Name));

    /// <summary>"a length", or "an angle or volume".</summary>
    public static string ANames(IReadOnlyList<Dimension> wanted) => Words.A(Names(wanted));

    /// <summary>"a length is a number with a unit, e.g. "0.5 mm"".</summary>
    public static string RightForm(IReadOnlyList<Dimension> wanted) => $"{ANames(wanted)} is a number with a unit, e.g. {Example(wanted)}";

    /// <summary>Quoted examples, one of each dimension.</summary>
    public static string Example(IReadOnlyList<Dimension> wanted) => Words.Or(wanted.Select(d => $"\"{Of(d).Right}\""));

    /// <summary>The unit shown first.</summary>
    public static string UsualUnit(Dimension dimension) => Unit.All.First(u => u.Dimension == dimension).Symbol;

    /// <summary>The units that a message names: those that any keyboard has.</summary>
    public static string UnitList(IReadOnlyList<Dimension> wanted) =>
        Words.Or(Unit.All.Where(u => wanted.Contains(u.Dimension) && !u.IsOtherSpelling && u.Symbol.All(char.IsAscii)).Select(u => u.Symbol));
}
