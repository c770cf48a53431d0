namespace WheelDraft.Engineering;

/// <summary>Cams as bodies that turn.</summary>
internal static class CamSolids
{
    /// <summary>The cams that conduct. One on net E is earthed; any other counts as live, a net of its own included, because nothing says that its lever keeps it from being so.</summary>
    public static IEnumerable<Solid> Conducting(Brief brief, IReadOnlyList<CamLayout> cams) => cams.Where(c => c.Brief.Net is not null).Select(c => Body(brief, c));

    /// <summary>The cams that insulate, as bodies that strips must not run into; they are never measured.</summary>
    public static IEnumerable<Solid> Insulating(Brief brief, IReadOnlyList<CamLayout> cams) => cams.Where(c => c.Brief.Net is null).Select(c => Body(brief, c));

    private static Solid Body(Brief brief, CamLayout cam)
    {
        string net = cam.Brief.Net ?? cam.Brief.Name;
        SolidKind kind = cam.Brief.Net is null ? SolidKind.Floating : string.Equals(cam.Brief.Net, "E", StringComparison.Ordinal) ? SolidKind.Earthed : SolidKind.Live;
        return new Solid($"cam {cam.Brief.Name}", net, kind, Turns: true, cam.Brief.LowerMm, cam.Brief.UpperMm, cam.Outline)
        {
            Tolerance = new(cam.Brief.CutToleranceMm ?? brief.Process.ToleranceMm, 0, brief.Wheel.RunOutMm / 2, brief.Wheel.FaceRunOutMm / 2),
        };
    }
}
