namespace WheelDraft.Formats.Parameters;

/// <summary>Every rule between keys.</summary>
internal static class FileRules
{
    /// <summary>Checks them all.</summary>
    public static void CheckAll(CheckedTable root, DiagnosticList diagnostics)
    {
        RuleBase[] rules =
        [
            new NameRules(root, diagnostics),
            new NetRules(root, diagnostics),
            new SupplyRules(root, diagnostics),
            new WheelRules(root, diagnostics),
            new ProcessRules(root, diagnostics),
            new ContactRules(root, diagnostics),
            new ProgrammeRules(root, diagnostics),
            new CircuitRules(root, diagnostics),
            new StripRules(root, diagnostics),
            new BoardRules(root, diagnostics),
            new CamRules(root, diagnostics),
            new CamProfileRules(root, diagnostics),
        ];
        foreach (RuleBase rule in rules)
        {
            rule.Check();
        }
    }
}
