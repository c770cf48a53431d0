using System.Globalization;
using WheelDraft.Fuzz;

// WheelDraft.Fuzz run [--parameters N] [--drawings N] [--arguments N] [--seed S] [--seconds T] [--folder DIR]    a run; see README.md
// WheelDraft.Fuzz replay FILE...                                                                    single cases, in full
// (WheelDraft.Fuzz work ... is how a run starts its workers.)
if (args is ["work", var folder, var name, var seed, var cases, var seconds])
{
    Watchdog.MostTime = TimeSpan.FromSeconds(int.Parse(seconds, CultureInfo.InvariantCulture));
    Branches.Open();
    using Targets targets = new();
    using Worker worker = new(targets.Named(name), new WorkOrder(folder, name, ulong.Parse(seed, CultureInfo.InvariantCulture), long.Parse(cases, CultureInfo.InvariantCulture)));

    // A stack as small as the smallest on which the program itself may run: a main thread of Windows has 1.5 MB.
    Thread thread = new(worker.Run, maxStackSize: 3 << 19);
    thread.Start();
    thread.Join();
    return 0;
}

if (args is ["replay", .. var files])
{
    using Targets targets = new();
    using Watchdog watchdog = new();
    bool good = true;
    foreach (string file in files)
    {
        Trial trial = Trial.Of(targets.OfFile(file), File.ReadAllBytes(file), Depth.Write | Depth.Twice, watchdog);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{file}: {trial.Shape ?? trial.Outcome.ToString()} ({trial.Time.TotalSeconds:0.00} s, {trial.Allocated / 1048576} MiB) {trial.Words}"));
        good &= trial.Shape is null;
    }

    return good ? 0 : 1;
}

if (args is not ["run", ..] || args.Length % 2 == 0)
{
    Console.Error.WriteLine("WheelDraft.Fuzz run [--parameters N] [--drawings N] [--arguments N] [--seed S] [--seconds T] [--folder DIR], or: WheelDraft.Fuzz replay FILE...");
    return 2;
}

string Given(string option, string otherwise) => Array.IndexOf(args, option) is > 0 and int at ? args[at + 1] : otherwise;
long Number(string option) => long.Parse(Given(option, "0"), CultureInfo.InvariantCulture);
string into = Given("--folder", "") is { Length: > 0 } asked ? Directory.CreateDirectory(asked).FullName : Directory.CreateTempSubdirectory("wheeldraft-fuzz-").FullName;
Console.WriteLine(into);
Supervisor supervisor = new(into, ulong.Parse(Given("--seed", "1"), CultureInfo.InvariantCulture), int.Parse(Given("--seconds", "2"), CultureInfo.InvariantCulture));

// Two lanes for two processors: parameter files take about as long as the rest.
List<(string, long)> rest = [("drawings", Number("--drawings")), ("arguments", Number("--arguments"))];
return supervisor.Run([[("parameters", Number("--parameters"))], rest]) ? 0 : 1;
