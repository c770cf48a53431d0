namespace WheelDraft.Engineering;

/// <summary>Chooses the motor: a speed in which geared synchronous motors are usually sold (common practice, no source).</summary>
internal static class MotorChoice
{
    // What is wanted over the greatest friction for gears, starting and age (common practice, no source).
    private const double TorqueFactor = 2;

    // A speed is written to as many digits, so that the file can hold it.
    private const int Digits = 9;

    /// <summary>The brief with the speed chosen, and a note on gear and torque.</summary>
    public static SettledBrief Of(Brief brief, List<Finding> told)
    {
        TextPlace place = brief.PlaceOf("drive.motor");
        if (StandardSpeeds.For(brief.Drive.TurnTimeS, brief.Supply.FrequencyHz) is not MotorSpeed speed)
        {
            throw new DesignRefusedException("drive.motor", $"No usual speed is fast enough for a turn of {Wording.Seconds(brief.Drive.TurnTimeS)}: give the motor's own, e.g. motor = \"120 rpm\", or leave 'motor' out.", place);
        }

        Brief chosen = brief with { Drive = brief.Drive with { ChoosesMotor = false, MotorRpm = Math.Round(speed.Rpm, Digits) } };
        string gear = speed.GearDown == 1 ? "it turns the wheel without a gear" : $"a gear of {Wording.Number(speed.GearDown, 4)} to 1 lies between it and the wheel";
        return new(chosen, [.. told, Finding.Note("drive.motor-chosen", $"Motor: {Wording.Number(speed.Rpm, 5)} rpm at {Wording.Number(brief.Supply.FrequencyHz, 2)} Hz, a speed in which geared synchronous motors are usually sold (common practice, no source); {gear}. {Torque(chosen)}", place)]);
    }

    private static string Torque(Brief brief)
    {
        try
        {
            return Design.Judged(brief).Strips.Friction is FrictionTorque { MostNm: > 0 } friction
                ? $"At the wheel it gives {Wording.Number(1000 * TorqueFactor * friction.MostNm, 1)} mN m or more: {Wording.Number(TorqueFactor, 0)} times the greatest friction of all wipers, for gears, starting and age (common practice, no source)."
                : "The friction of its wipers is not known ([drive] friction, and strips), so no torque is asked of it.";
        }
        catch (DesignRefusedException)
        {
            return "";
        }
    }
}
