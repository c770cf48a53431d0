namespace WheelDraft.Engineering;

/// <summary>How a lever on its cam moves at one programme angle, at the nominal speed.</summary>
/// <param name="Lift">Its lift, rad or mm.</param>
/// <param name="VelocityPerS">How fast it is lifted, rad/s or mm/s; 0 while it sinks over a step.</param>
/// <param name="AccelerationPerS2">How fast that changes.</param>
/// <param name="JerkPerS3">How fast that changes in turn, within a motion.</param>
/// <param name="PressureRad">Pressure angle, rad; null over a step.</param>
internal readonly record struct CamMoment(double Lift, double VelocityPerS, double AccelerationPerS2, double JerkPerS3, double? PressureRad)
{
    /// <summary>At a programme angle.</summary>
    public static CamMoment Of(Motion motion, CamLayout cam, double programmeRad)
    {
        double speed = motion.SpeedRadPerS;
        MotionPoint at = cam.Shape.MotionAt(programmeRad);
        return new(cam.LiftAt(programmeRad), at.Velocity * speed, at.Acceleration * speed * speed, at.Jerk * speed * speed * speed, cam.Shape.PressureRad(programmeRad));
    }
}
