namespace WheelDraft.Cli;

/// <summary>Every command, in the order in which the help shows them.</summary>
internal static class CommandList
{
    /// <summary>The commands, newly made.</summary>
    public static IReadOnlyList<ICommand> All() =>
    [
        new NewCommand(),
        new MakeCommand(),
        new CheckCommand(),
        new WhyCommand(),
        new RunCommand(),
        new SettleCommand(),
        new VaryCommand(),
        new LearnCommand(),
        new CompareCommand(),
        new RuleCommand(),
        new CalibrateCommand(),
        new WatchCommand(),
        new KeysCommand(),
        new ProcessesCommand(),
        new WordsCommand(),
        new ExplainCommand(),
        new GuideCommand(),
        new SchemaCommand(),
        new CompletionCommand(),
        new ManualCommand(),
    ];
}
