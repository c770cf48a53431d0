namespace WheelDraft.Engineering;

/// <summary>Cams and their levers as bodies.</summary>
internal static class CamSolids
{
    /// <summary>The cams and levers that conduct.</summary>
    public static IEnumerable<Solid> Conducting(Brief brief, IReadOnlyList<CamLayout> cams) =>
        cams.SelectMany(c => (c.Brief.Net is null ? [] : new[] { Cam(brief, c) }).Concat(c.Brief.Body?.Net is null ? [] : LeverSolids.Of(brief, c)));

    /// <summary>The cams that insulate, as bodies that strips must not run into; they are never measured.</summary>
    public static IEnumerable<Solid> Insulating(Brief brief, IReadOnlyList<CamLayout> cams) => cams.Where(c => c.Brief.Net is null).Select(c => Cam(brief, c));

    /// <summary>What a net makes of what conducts: earthed on net E; live in the circuit; a metal lever that hangs on nothing is taken as what a hand reaches, a cam
    /// without one as live, because nothing says that its lever keeps it from being so.</summary>
    public static SolidKind KindOf(Brief brief, string net) =>
        string.Equals(net, "E", StringComparison.Ordinal) ? SolidKind.Earthed
        : !SourcelessNets.IsOfCircuit(brief, net) && brief.Cams.Any(c => string.Equals(c.Body?.Net, net, StringComparison.Ordinal)) ? SolidKind.Touchable
        : SolidKind.Live;

    private static Solid Cam(Brief brief, CamLayout cam) =>
        new($"cam {cam.Brief.Name}", cam.Brief.Net ?? cam.Brief.Name, cam.Brief.Net is { } net ? KindOf(brief, net) : SolidKind.Floating, Turns: true, cam.Brief.LowerMm, cam.Brief.UpperMm, cam.Outline)
        {
            Tolerance = new(cam.Brief.CutToleranceMm ?? brief.Process.ToleranceMm, 0, brief.Wheel.RunOutMm / 2, brief.Wheel.FaceRunOutMm / 2),
        };
}
