using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>A film in one file as a list of moments, each with the time that it is shown and a caption: one turn, or a scenario told event by event.</summary>
/// <remarks>Every make and break of a turn is a moment of its own, so that a film switches when the timer does. After its end it begins anew.</remarks>
public sealed class MomentReel
{
    /// <summary>How long a film of one turn takes, s.</summary>
    public const double TurnForS = 12;

    // Pictures a second while the wheel turns.
    private const double PerS = 10;

    // Of a story: what passes between two events is shown this much faster, within these limits, s.
    private const double Faster = 12;
    private const double LeastMoveS = 0.4;
    private const double MostMoveS = 4;

    // Time to read a caption: a moment to find it, and some four words a second.
    private const double FindS = 0.9;
    private const double WordS = 0.25;

    // The strip for captions: two lines of a title.
    private const double CaptionMm = 12;

    private readonly Design _design;
    private readonly Dictionary<int, MomentScene> _scenes = [];

    private MomentReel(Design design, string name, string title, IReadOnlyList<ReelFrame> frames)
    {
        (_design, Name, Title, Frames) = (design, name, title, frames);
        foreach (int inputs in frames.Select(f => f.Moment.State.Inputs).Distinct())
        {
            _scenes.Add(inputs, new MomentScene(design, inputs, CaptionMm));
        }
    }

    /// <summary>One turn, inputs held as they are.</summary>
    /// <param name="design">The design.</param>
    /// <param name="inputs">Inputs that are closed, one bit each.</param>
    /// <exception cref="ArgumentOutOfRangeException">The circuit does not have these inputs.</exception>
    public static MomentReel OfTurn(Design design, int inputs = 0)
    {
        ArgumentNullException.ThrowIfNull(design);
        const int steps = (int)(TurnForS * PerS);
        double[] angles =
        [
            .. Enumerable.Range(0, steps).Select(i => Angles.TurnRad * i / steps)
                .Concat(design.Circuit.Intervals.Select(i => i.FromRad))
                .Order()
                .Aggregate(new List<double>(), (kept, angle) =>
                {
                    // A step and an edge that fall together are one moment.
                    if (kept.Count == 0 || angle - kept[^1] > 1e-6)
                    {
                        kept.Add(angle);
                    }

                    return kept;
                }),
        ];
        string caption = $"One turn of {Wording.Seconds(design.Motion.TurnTimeS)}, shown in {Wording.Seconds(TurnForS)}.";
        ReelFrame[] frames =
        [
            .. angles.Select((angle, i) => new ReelFrame(
                ((i + 1 < angles.Length ? angles[i + 1] : Angles.TurnRad) - angle) / Angles.TurnRad * TurnForS,
                design.Circuit.At(angle, inputs),
                angle,
                i + 1 < angles.Length ? angles[i + 1] : Angles.TurnRad,
                caption)),
        ];
        return new(design, "turn", $"One turn of {design.Brief.Title}", frames);
    }

    /// <summary>A scenario, with a caption at each event.</summary>
    /// <param name="design">The design.</param>
    /// <param name="index">Which scenario, from 0 in file order.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such scenario.</exception>
    public static MomentReel OfStory(Design design, int index)
    {
        ArgumentNullException.ThrowIfNull(design);
        ArgumentOutOfRangeException.ThrowIfNegative(index);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(index, design.Brief.Scenarios.Count);
        ScenarioBrief scenario = design.Brief.Scenarios[index];
        ScenarioRun run = design.Circuit.Play(scenario).Beginning(MostEvents);
        IReadOnlyList<string> captions = StoryWords.Of(design, run);
        List<ReelFrame> frames = [];
        for (int m = 0; m < run.Moments.Count; m++)
        {
            RunMoment moment = run.Moments[m];
            double untilS = m + 1 < run.Moments.Count ? run.Moments[m + 1].TimeS : run.EndS;
            frames.AddRange(Event(design, moment, untilS, captions[m]));
        }

        string slug = FileSlugs.Of(design.Brief.Scenarios.Select(s => s.Name))[index];
        return new(design, $"story-{slug}", $"{scenario.Name}: {design.Brief.Title}", frames);
    }

    // A film of more would take longer than anybody watches, some five minutes.
    private const int MostEvents = 120;

    /// <summary>Name for files: turn, story-one-dry-hour-begins.</summary>
    public string Name { get; }

    /// <summary>What it shows, in a line.</summary>
    internal string Title { get; }

    /// <summary>The moments.</summary>
    internal IReadOnlyList<ReelFrame> Frames { get; }

    /// <summary>How long it takes, s.</summary>
    public double ForS => Frames.Sum(f => f.ForS);

    /// <summary>The size of every picture, on paper.</summary>
    internal PaperSize Size => _scenes[Frames[0].Moment.State.Inputs].Size;

    /// <summary>The axis of the wheel on the paper.</summary>
    internal Point Axis => _scenes[Frames[0].Moment.State.Inputs].Axis;

    /// <summary>How far the chart's cursor goes in a turn, mm.</summary>
    internal double CursorTravelMm => _scenes[Frames[0].Moment.State.Inputs].CursorTravelMm;

    /// <summary>Which way the wheel turns on the paper: 1 anticlockwise.</summary>
    internal double Sense => _design.Motion.Sigma;

    /// <summary>The levers that a film moves itself, in the order of the cams.</summary>
    internal IReadOnlyList<LeverReel> Levers => [.. _design.Cams.Select((cam, i) => new LeverReel(MomentPlan.LeverGroup(i), _scenes[Frames[0].Moment.State.Inputs].WayOf(cam), cam.Brief.Swings, (frame, turnedRad) => LiftOf(cam, frame, turnedRad)))];

    // What holds a lever is that of the moment, the wheel may have turned on since.
    private double LiftOf(CamLayout cam, ReelFrame frame, double turnedRad)
    {
        (bool blocked, bool latched) = new MomentView(_design, frame.Moment).HoldsOn(cam);
        return cam.PlaceAt(Angles.InTurn(turnedRad), blocked, latched);
    }

    /// <summary>A moment as a picture.</summary>
    /// <param name="index">Which one, from 0.</param>
    /// <param name="isUnmoved">Whether wheel, cursor and levers are drawn as at home, for a film that moves them itself.</param>
    internal Sheet Picture(int index, bool isUnmoved = false)
    {
        ReelFrame frame = Frames[index];
        return _scenes[frame.Moment.State.Inputs].At(new MomentView(_design, frame.Moment) { IsUnmoved = isUnmoved }, frame.Caption);
    }

    /// <summary>An event, shown as long as its caption is read, and what then turns until the next.</summary>
    private static IEnumerable<ReelFrame> Event(Design design, RunMoment moment, double untilS, string caption)
    {
        int inputs = moment.ClosedInputs.Where(i => design.Circuit.Network.LeverOf(i) is null).Aggregate(0, (mask, name) => mask | (1 << design.Circuit.Network.InputOf(name)));
        double fromRad = moment.Turns * Angles.TurnRad;
        double readS = FindS + (WordS * caption.Split(' ').Length);
        yield return Frame(0, 0, readS);
        double lastsS = untilS - moment.TimeS;
        if (!moment.IsTurning || !(lastsS > 0))
        {
            yield break;
        }

        double moveS = Math.Clamp(lastsS / Faster, LeastMoveS, MostMoveS);
        int steps = Math.Max(1, (int)Math.Round(moveS * PerS));
        double sweepRad = lastsS / design.Motion.TurnTimeS * Angles.TurnRad;
        for (int s = 0; s < steps; s++)
        {
            yield return Frame(sweepRad * s / steps, sweepRad * (s + 1) / steps, moveS / steps);
        }

        // The moment's own angle is that of an edge, to the last digit; turns are counted apart.
        ReelFrame Frame(double onRad, double toRad, double forS) =>
            new(forS, design.Circuit.At(moment.AngleRad + onRad, inputs), fromRad + moment.AngleRad + onRad, fromRad + moment.AngleRad + toRad, caption);
    }
}

/// <summary>A moment of a film.</summary>
/// <param name="ForS">How long it is shown, s.</param>
/// <param name="Moment">How everything stands.</param>
/// <param name="TurnedRad">How far the wheel has turned since the film began, whole turns counted.</param>
/// <param name="ToRad">How far it has turned when the next moment comes; the same where it stands.</param>
/// <param name="Caption">What is said of it.</param>
internal sealed record ReelFrame(double ForS, CircuitMoment Moment, double TurnedRad, double ToRad, string Caption);

/// <summary>A lever in a film.</summary>
/// <param name="Group">The group that it is drawn in, at rest.</param>
/// <param name="Way">How it goes on the paper.</param>
/// <param name="Swings">Whether lifts are angles, rad, or lengths, mm.</param>
/// <param name="LiftOf">Its lift while a moment is shown, by how far the wheel has turned.</param>
internal sealed record LeverReel(string Group, LeverWay Way, bool Swings, Func<ReelFrame, double, double> LiftOf);
