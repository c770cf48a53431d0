using WheelDraft.Engineering;
using WheelDraft.Geometry;

namespace WheelDraft.Tests.Chosen;

/// <summary>Briefs of timers that leave order, stations and strips to the program, by number: the same number is the same timer.</summary>
internal static class RandomTimers
{
    /// <summary>A timer of 3 to 8 outputs; every second one of lands, every fourth with strips.</summary>
    internal static Brief Of(int number)
    {
        Random random = new(number);
        bool lands = number % 2 == 1, strips = number % 4 == 2;
        int count = strips ? random.Next(3, 5) : random.Next(3, 9);
        double turn = random.Next(6, 40) * 10;
        OutputBrief[] outputs = [.. Enumerable.Range(0, count).Select(i => Output(random, (i, turn), (lands, strips)))];
        Brief plain = lands ? Briefs.Lands(outputs) : Briefs.Plain(outputs);
        Brief brief = plain with
        {
            Drive = new(turn, random.Next(2) == 0 ? Turning.Clockwise : Turning.Anticlockwise, 0, default) { Friction = strips ? new(0.2, 0.5) : null },
            Wheel = plain.Wheel with { SearchesRingOrder = true, Rim = random.Next(3) > 0 },
            Feed = plain.Feed is FeedBrief feed ? feed with { StationRad = null, Contact = strips ? new(0.8, null, 0.8, null, null) : feed.Contact } : null,
            Loads = [.. outputs.Select(o => new LoadBrief(o.Name + " load", o.Net, "N", new RatedPower(random.Next(4, 60), 1), 0.8, 0.2))],
            DriveMotor = new LoadBrief("motor", "L", "N", new RatedPower(3, 1), 0.8, 0.2),
        };
        return strips ? WithStrips(brief) : brief;
    }

    private static OutputBrief Output(Random random, (int Index, double TurnS) at, (bool Lands, bool Strips) kind)
    {
        string name = FormattableString.Invariant($"o{at.Index}");
        double from = random.Next(0, (int)at.TurnS), lasts = at.TurnS * (0.04 + (0.5 * random.NextDouble() * random.NextDouble()));
        double tolerance = (lasts * 0.01) + (at.TurnS * (0.004 + (0.012 * random.NextDouble())));
        ContactBrief contact = kind.Strips ? new(0.4, null, 0.4, null, null) : new(0.3 + (0.5 * random.NextDouble()), 1 + (3 * random.NextDouble()), 0.9, 0, null);
        return new(name, name, new([new(new StartAt(TurnAmount.Seconds(from)), new LastsFor(TurnAmount.Seconds(Math.Round(lasts, 1))))]), contact)
        {
            ToleranceS = Math.Round(tolerance, 2),
            SidePlayMm = 0.1,
            OverOpenContact = random.Next(2) == 0 ? Insulation.Functional : null,
            ReturnNet = kind.Lands ? "L" : null,
        };
    }

    private static Brief WithStrips(Brief brief) => brief with
    {
        Surfaces = [new("floor", MaterialGroup.IIIa, -7, null)],
        Forming = new FormingBrief { FoldRad = new(Angles.RadFromDeg(0.5), IsGiven: true) },
        StripRecipe = new([new("C51000-H04", [0.4, 0.5])], new RivetContact(new(2.2, 1.5, 2.5)), new(14, 8), new(1, 1.6), "floor") { Tab = "4.8x0.5", YieldFactor = 1.4 },
        Strips =
        [
            new("feed strip", new ServesFeed(), "", 0, []) { Left = new(Shape: true, Approach: true, Deflection: true) },
            .. brief.Outputs.Select(o => new StripBrief(o.Name + " strip", new ServesOutput(o.Name, IsReturn: false), "", 0, []) { Left = new(Shape: true, Approach: true, Deflection: true) }),
        ],
    };

    /// <summary>A brief with its order, stations and approaches by chance: nothing of it is left to the program but the shapes of strips.</summary>
    internal static Brief ByChance(Brief brief, Random random)
    {
        string[] names = [.. brief.Outputs.Select(o => o.Name)];
        string[] rings = brief.Feed is null ? names : [FeedBrief.NameInOrder, .. names];
        random.Shuffle(rings);
        double Station() => Angles.RadFromDeg(random.Next(0, 360));
        OutputBrief[] outputs = [.. brief.Outputs.Select(o =>
        {
            double own = Station();

            // Half of the second wipers stand near the first, as people would put them.
            double other = random.Next(2) == 0 ? Station() : Angles.InTurn(own + Angles.RadFromDeg((random.Next(2) == 0 ? 1 : -1) * random.Next(1, 41)));
            return o with { StationRad = own, ReturnStationRad = brief.Feed is null ? other : null };
        })];
        return brief with
        {
            Wheel = brief.Wheel with { SearchesRingOrder = false, RingOrder = rings },
            Feed = brief.Feed is FeedBrief feed ? feed with { StationRad = Station() } : null,
            Outputs = outputs,
            Strips = [.. brief.Strips.Select(s => s with { ApproachRad = Angles.RadFromDeg((brief.Drive.Direction == Turning.Clockwise ? 1 : -1) * random.Next(1, 151)), Left = s.Left with { Approach = false } })],
        };
    }
}
