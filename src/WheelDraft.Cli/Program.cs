using WheelDraft.Cli;

return ProgramRun.FromConsole(args);
