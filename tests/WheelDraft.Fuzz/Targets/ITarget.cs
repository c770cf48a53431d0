namespace WheelDraft.Fuzz;

/// <summary>One way into the program.</summary>
internal interface ITarget
{
    /// <summary>Its name, also that of its folder of seeds.</summary>
    string Name { get; }

    /// <summary>How a file of a case ends.</summary>
    string Ending { get; }

    /// <summary>A new case from kept ones.</summary>
    byte[] Mutate(byte[] parent, byte[] donor, Chance chance);

    /// <summary>Runs a case and looks at every promise.</summary>
    /// <param name="bytes">The case.</param>
    /// <param name="depth">How much of it is done besides.</param>
    /// <exception cref="BrokenPromiseException">A promise was broken.</exception>
    Outcome Try(byte[] bytes, Depth depth);
}

/// <summary>What came of a case.</summary>
internal enum Outcome
{
    /// <summary>Refused by the reader or the arguments.</summary>
    Refused,

    /// <summary>Read, but refused when it was worked out.</summary>
    RefusedLate,

    /// <summary>Worked out to a verdict.</summary>
    Judged,
}

/// <summary>How much is done with a good case.</summary>
[Flags]
internal enum Depth
{
    /// <summary>Read, work out, report.</summary>
    Check = 0,

    /// <summary>All sheets and writers besides, into memory.</summary>
    Write = 1,

    /// <summary>All of it twice: the same bytes.</summary>
    Twice = 2,
}

/// <summary>The program did something that it promises not to.</summary>
/// <param name="shape">What alike cases have in common.</param>
/// <param name="message">What happened.</param>
internal sealed class BrokenPromiseException(string shape, string message) : Exception(message)
{
    public string Shape => shape;
}
