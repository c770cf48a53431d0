using System.Collections.Concurrent;
using WheelDraft.Geometry;

namespace WheelDraft.Engineering;

/// <summary>Where a strip is to be built: everything that its shape depends on.</summary>
/// <param name="ReachMm">From its contact to its riser, mm.</param>
/// <param name="ApproachDeg">Its approach, whole degrees.</param>
internal readonly record struct StripSite(double ReachMm, double ApproachDeg)
{
    // Arms are as long as half millimetres make them; a reach to a tenth lets strips of nearly the same place be the same strip.
    private const double StepMm = 0.1;

    /// <summary>The site of a strip on a ring, whose riser stays outside a circle.</summary>
    /// <param name="ringMm">Radius of the ring, mm.</param>
    /// <param name="clearOfMm">Radius of the circle, mm.</param>
    /// <param name="approachDeg">Approach, degrees.</param>
    /// <param name="footMm">Width of the foot, mm.</param>
    public static StripSite Of(double ringMm, double clearOfMm, double approachDeg, double footMm)
    {
        double approach = Angles.RadFromDeg(approachDeg);
        double aside = Math.Max(0, (ringMm * Math.Abs(Math.Sin(approach))) - (footMm / 2));
        double reach = Math.Sqrt(Math.Max(0, (clearOfMm * clearOfMm) - (aside * aside))) - (ringMm * Math.Cos(approach));
        return new(Math.Round(Math.Ceiling((reach / StepMm) - 1e-9) * StepMm, 6), approachDeg);
    }
}

/// <summary>Builds a whole strip for a contact force: tab, foot, riser outside the wheel, arm over the rings, contact.</summary>
/// <remarks>The force is a quadrature, not a search: the spring gives so much a newton, so the deflection for a force follows, and with it the length of the riser;
/// because that length moves the spring a little, three rounds are made. The arm is folded down by as much as it turns, so that it is level when pressed. Of the arms that keep
/// every wish, and press within what practice wants, the shortest is taken, from the reach that is needed on. What cannot keep them all comes as near as it can: the design judges it.</remarks>
/// <param name="brief">The brief.</param>
/// <param name="recipe">What strips are made of.</param>
internal sealed class StripBuilder(Brief brief, StripsBrief recipe)
{
    // How much longer than needed an arm may be, mm: longer ones are softer and stressed less.
    private static readonly double[] LongerMm = [0, 2, 5, 9, 14, 20, 28];

    // Where in the range of forces it is tried, the middle first.
    private static readonly double[] Shares = [0.5, 0.9, 0.2];

    private const int Rounds = 3;

    // An arm bends most near its root and least at its tip: folded down by this many times what makes its ends level, no part of it is lower than its tip.
    private const double FoldedDown = 1.25;

    // A usual practice that is not kept counts this much of a wish that is not.
    private const double OfPractice = 1e-3;

    // Folds of this many thicknesses are made without marks and are stressed little more than straights (common practice, no source).
    private const double FoldThicknesses = 3;

    // Beside a rivet's head, both sides together, mm; and the width of a strip at a fold that touches, mm.
    private const double BesideRivetMm = 0.5;
    private const double FoldWidthMm = 3;

    private readonly ConcurrentDictionary<(int, StripSite), StripBrief> _built = new();
    private readonly ConcurrentDictionary<(int, double), StripBrief> _placeholders = new();
    private readonly PressingLimits _limits = PressingLimits.Of(brief);

    private sealed record TriedStrip(StripBrief Strip, double Lacks);

    /// <summary>The strip of a brief for a site.</summary>
    public StripBrief Build(int strip, StripSite site) => _built.GetOrAdd((strip, site), key => Best(brief.Strips[key.Item1], key.Item1, key.Item2));

    /// <summary>A strip that has the right contact and nothing else, for a wheel to be set out before its strips.</summary>
    public StripBrief Placeholder(int strip, double approachDeg) => _placeholders.GetOrAdd((strip, approachDeg), key =>
    {
        StripBrief asked = brief.Strips[key.Item1];
        (string material, double thickness) = Stock(asked)[0];
        return Shaped(asked, (material, thickness), new(30, 1.5, 3)) with { ApproachRad = Angles.RadFromDeg(key.Item2) };
    });

    /// <summary>A strip whose shape is given, with the deflection for the middle of the force asked for.</summary>
    public StripBrief Pressing(StripBrief strip, int index)
    {
        double force = (recipe.Force.LeastN + recipe.Force.MostN) / 2;
        StripBrief guess = strip with { DeflectionMm = 1.5 };
        for (int round = 0; round < Rounds && Form(guess, index) is StripForm form; round++)
        {
            guess = guess with { DeflectionMm = Math.Max(0.05, Near(force * StripSpring.Of(form, Contact(guess, index), Adjust(guess), null).GivesMmPerN.Z, 0.05)) };
        }

        return guess;
    }

    private List<(string Material, double ThicknessMm)> Stock(StripBrief asked)
    {
        TabDimensions? tab = recipe.Tab is string size ? TabDimensions.Find(size) : null;
        IEnumerable<(string Material, double ThicknessMm)> all = recipe.AtHand.SelectMany(s => s.ThicknessesMm.Order().Select(t => (s.Material, t)));
        if (asked.Material.Length > 0)
        {
            all = all.Where(s => string.Equals(s.Material, asked.Material, StringComparison.OrdinalIgnoreCase)).DefaultIfEmpty((asked.Material, asked.ThicknessMm));
        }

        List<(string Material, double ThicknessMm)> fit = [.. all.Where(s => (asked.ThicknessMm == 0 || s.ThicknessMm == asked.ThicknessMm) && tab?.IsCutFrom(s.ThicknessMm) != false)];
        return fit.Count > 0 ? fit : [(asked.Material.Length > 0 ? asked.Material : recipe.AtHand[0].Material, asked.ThicknessMm > 0 ? asked.ThicknessMm : recipe.AtHand[0].ThicknessesMm[0])];
    }

    private StripBrief Best(StripBrief asked, int index, StripSite site)
    {
        double approach = Angles.RadFromDeg(site.ApproachDeg);
        TriedStrip? nearest = null;
        foreach (double longer in LongerMm)
        {
            // Thin stock first, and the middle of the range of forces: the first that keeps every wish is taken.
            foreach (TriedStrip here in Stock(asked).SelectMany(s => Shares.Select(f => Try((asked, index, approach), s, (site.ReachMm + longer, f)))).OfType<TriedStrip>())
            {
                if (here.Lacks <= 0)
                {
                    return here.Strip;
                }

                nearest = nearest is null || here.Lacks < nearest.Lacks ? here : nearest;
            }
        }

        return nearest?.Strip ?? Placeholder(index, site.ApproachDeg);
    }

    private TriedStrip? Try((StripBrief Asked, int Index, double ApproachRad) what, (string Material, double ThicknessMm) stock, (double ReachMm, double Share) wish)
    {
        double force = recipe.Force.LeastN + (wish.Share * (recipe.Force.MostN - recipe.Force.LeastN));
        ArmShape shape = new(wish.ReachMm, what.Asked.DeflectionMm ?? 1.5, 3);
        for (int round = 0; round < Rounds; round++)
        {
            StripBrief guess = Shaped(what.Asked, stock, shape) with { ApproachRad = what.ApproachRad };
            if (Form(guess, what.Index) is not { Nose: StripNose nose } form)
            {
                return null;
            }

            StripSpring spring = StripSpring.Of(form, Contact(guess, what.Index), Adjust(what.Asked), null);
            double arm = shape.ArmMm + wish.ReachMm - ReachOf(form, nose);
            double deflection = what.Asked.DeflectionMm ?? (force * spring.GivesMmPerN.Z);
            shape = new(Up(arm, 0.5), Near(deflection, 0.05), Near(Angles.DegFromRad(FoldedDown * deflection / Math.Max(1, wish.ReachMm)), 0.2));
            if (!(shape.ArmMm > 2) || !(shape.DeflectionMm > 0) || shape.DownDeg > 30)
            {
                return null;
            }
        }

        return Judged(Shaped(what.Asked, stock, shape) with { ApproachRad = what.ApproachRad }, what.Index);
    }

    // How far the wishes are from being kept: 0 where all are.
    private TriedStrip? Judged(StripBrief strip, int index)
    {
        if (Form(strip, index) is not StripForm form)
        {
            return null;
        }

        StripContact contact = Contact(strip, index);
        StripSpring drawn = StripSpring.Of(form, contact, Adjust(strip), null);
        double lacks = Lack(recipe.YieldFactor ?? 1, drawn.YieldFactor);
        if (lacks > 0.5)
        {
            return new(strip, 10 + lacks);
        }

        StripSpring spring = StripSpring.Of(form, contact, Adjust(strip), _limits);
        if (spring.Band.Fails is not null)
        {
            return new(strip, 100);
        }

        lacks = Lack(Math.Max(1, recipe.YieldFactor ?? 1), spring.YieldFactor)
            + (spring.FatigueFactor is double fatigue && recipe.FatigueFactor is double least ? Lack(least, fatigue) : 0)
            + Lack(recipe.Force.LeastN, spring.ForceN) + Lack(spring.ForceN, recipe.Force.MostN)
            + (spring.LeastForceN > 0 ? 0 : 1)
            + (OfPractice * (Lack(StripSetting.LeastUsualN, spring.LeastForceN) + Lack(spring.MostForceN, StripSetting.MostUsualN)));
        return new(strip, lacks);
    }

    private static double Lack(double wanted, double have) => Math.Max(0, (wanted - have) / wanted);

    private StripForm? Form(StripBrief strip, int index) => StripForming.Form(With(strip, index), index, []);

    private StripContact Contact(StripBrief strip, int index) => strip.Task is ServesOutput serves
        ? StripContact.OfOutput(With(strip, index), OutputOf(serves), serves.IsReturn)
        : StripContact.OfFeed(With(strip, index));

    private AdjustBrief? Adjust(StripBrief strip) => strip.Task is ServesOutput serves ? brief.Outputs[OutputOf(serves)].Adjust : null;

    private int OutputOf(ServesOutput serves) => Enumerable.Range(0, brief.Outputs.Count).First(i => string.Equals(brief.Outputs[i].Name, serves.Output, StringComparison.OrdinalIgnoreCase));

    private Brief With(StripBrief strip, int index) => brief with { Strips = [.. brief.Strips.Select((s, i) => i == index ? strip : s)] };

    // From the middle of the riser to the contact, along the arm.
    private static double ReachOf(StripForm form, StripNose nose) => nose.Centre.X - form.Pieces.First(p => form.Strip.Shape[p.ShapeIndex] is StripStraight { LengthMm: null }).Start.Origin.X;

    /// <summary>What is free in a shape.</summary>
    private readonly record struct ArmShape(double ArmMm, double DeflectionMm, double DownDeg);

    private StripBrief Shaped(StripBrief asked, (string Material, double ThicknessMm) stock, ArmShape shape)
    {
        double t = stock.ThicknessMm, width = recipe.Foot.WidthMm;
        double radius = Up(Math.Max(FoldThicknesses, MaterialTable.Find(stock.Material).Found?.LeastRadiusGoodWay?.Value ?? 0) * t, 0.1);
        double tip = Math.Min(width, recipe.Contact is RivetContact rivet ? rivet.Rivet.DiameterMm + BesideRivetMm : FoldWidthMm);
        List<StripPiece> pieces =
        [
            .. recipe.Tab is string tab ? [new StripTab(tab)] : Array.Empty<StripPiece>(),
            new StripStraight(recipe.Foot.LengthMm, width, null),
            new StripBend(Angles.RadFromDeg(90), radius, IsContact: false),
            new StripStraight(null, width, null),
            new StripBend(Angles.RadFromDeg(-90 - shape.DownDeg), radius, IsContact: false),
            new StripStraight(shape.ArmMm, width, tip),
            .. Touching(tip),
        ];
        double tabMm = recipe.Tab is string size && TabDimensions.Find(size) is { } of ? (width > of.WidthMm + 1e-6 ? of.ToShoulderMm : of.BladeMm) : 0;
        return asked with
        {
            Material = stock.Material,
            ThicknessMm = t,
            Shape = pieces,
            Grain = asked.Grain ?? StripGrain.Along,
            Clamp = new(Up(tabMm + 0.5, 0.5), Math.Floor((tabMm + recipe.Foot.LengthMm) * 10) / 10),
            DeflectionMm = shape.DeflectionMm,
            SeatedOn = asked.SeatedOn ?? recipe.SeatedOn,
            Left = default,
        };
    }

    private IEnumerable<StripPiece> Touching(double tipMm) => recipe.Contact switch
    {
        RivetContact rivet => [rivet.Rivet],
        FoldContact fold =>
        [
            new StripBend(Angles.RadFromDeg(-45), fold.RadiusMm, IsContact: false),
            new StripStraight(2, tipMm, null),
            new StripBend(Angles.RadFromDeg(90), fold.RadiusMm, IsContact: true),
            new StripStraight(3, tipMm, null),
        ],
        _ => [],
    };

    private static double Up(double value, double step) => Math.Round(Math.Ceiling((value / step) - 1e-9) * step, 6);

    private static double Near(double value, double step) => Math.Round(Math.Round(value / step) * step, 6);
}
