using System.Globalization;

namespace WheelDraft.Engineering;

/// <summary>What of the circuit lies on E: the protective conductor is for faults alone and carries no current in use.</summary>
/// <remarks>An error: once the conductor is broken, every earthed part stands at the potential of the line behind the load, and nothing but a person leads
/// the current away; while it is whole, a residual-current device opens. That a protective conductor is no return for loads is common
/// practice everywhere (IEC 61140 and IEC 60364-5-54, from memory; no clause is quoted). Every path to E ends with something that lies on it, so
/// that looking at the ends finds them all.</remarks>
internal static class ProtectiveConductor
{
    /// <summary>Name of the net.</summary>
    internal const string Net = "E";

    /// <summary>One finding for each thing of the circuit on E, in the order of the file.</summary>
    public static IEnumerable<Finding> Findings(Brief brief) =>
    [
        .. brief.Feed is { Net: Net } ? [Of(brief, "feed.net", "The feed joins the wheel to E. Feed it from a line")] : Array.Empty<Finding>(),
        .. brief.Outputs.SelectMany((o, i) => Output(brief, o, i)),
        .. brief.Loads.Index().Where(l => Ends(l.Item.From, l.Item.To)).Select(l => Load(brief, Path("load", l.Index), $"The load '{l.Item.Name}'")),
        .. brief.DriveMotor is { } motor && Ends(motor.From, motor.To) ? [Load(brief, "drive_motor", "The drive motor")] : Array.Empty<Finding>(),
        .. brief.Inputs.Index().Where(n => Ends(n.Item.From, n.Item.To)).Select(n => Of(brief, Path("input", n.Index) + ".between", $"The input '{n.Item.Name}' switches E. Join it to N")),
    ];

    private static Finding Load(Brief brief, string path, string who) =>
        Of(brief, path + ".between", $"{who} returns its current by E. Its other end belongs on N");

    private static IEnumerable<Finding> Output(Brief brief, OutputBrief output, int index)
    {
        if (Ends(output.Net, output.ReturnNet))
        {
            string key = output.Net is Net ? ".net" : ".return_net";
            yield return Of(brief, Path("output", index) + key, $"A wiper of output '{output.Name}' is on E. Give it a net of its own, or a line");
        }
    }

    private static bool Ends(string from, string? to) => from is Net || to is Net;

    private static string Path(string table, int index) => string.Create(CultureInfo.InvariantCulture, $"{table}[{index}]");

    private static Finding Of(Brief brief, string path, string found) => Finding.Error(
        "circuit.protective-conductor",
        $"{found}: the protective conductor is for faults alone. With current in it a residual-current device opens; and where it breaks, every earthed part becomes live.",
        brief.PlaceOf(path));
}
