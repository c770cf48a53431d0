namespace WheelDraft.Formats.Parameters;

/// <summary>What a quantity measures.</summary>
internal enum Dimension
{
    /// <summary>A length, base unit mm.</summary>
    Length,

    /// <summary>A time, base unit s.</summary>
    Time,

    /// <summary>An angle, base unit deg.</summary>
    Angle,

    /// <summary>A rotational speed, base unit rpm.</summary>
    Speed,

    /// <summary>A frequency, base unit Hz.</summary>
    Frequency,

    /// <summary>A voltage, base unit V.</summary>
    Voltage,

    /// <summary>A current, base unit A.</summary>
    Current,

    /// <summary>A power, base unit W.</summary>
    Power,

    /// <summary>A resistance or reactance, base unit ohm.</summary>
    Resistance,

    /// <summary>A force, base unit N.</summary>
    Force,

    /// <summary>A torque, base unit N m.</summary>
    Torque,

    /// <summary>A volume flow, base unit L/s.</summary>
    Flow,

    /// <summary>A volume, base unit L.</summary>
    Volume,

    /// <summary>A torque by an angle, base unit N mm/deg.</summary>
    TorqueRate,

    /// <summary>A force by a length, base unit N/mm.</summary>
    ForceRate,

    /// <summary>A moment of inertia, base unit g mm2.</summary>
    Inertia,

    /// <summary>A mass, base unit g.</summary>
    Mass,

    /// <summary>A share of something, base unit 1 (100 % is 1).</summary>
    Share,
}
