using WheelDraft.Engineering;

namespace WheelDraft.Formats.Report;

/// <summary>Strips in the report.</summary>
internal static class StripsJson
{
    public static void Write(JsonSheet json, Design design)
    {
        json.Objects("strips", design.Strips.Strips, s => Strip(json, s));
        if (design.Strips.Strips.Any(s => s.Spring is not null))
        {
            Forming(json, design.Brief.Forming);
        }

        if (design.Strips.Friction is FrictionTorque friction && design.Strips.Strips.Any(s => s.Spring is not null))
        {
            json.Object("friction", () =>
            {
                json.Plain("least_nm", friction.LeastNm);
                json.Plain("most_nm", friction.MostNm);
                if (friction.MotorNm is double motor)
                {
                    json.Plain("motor_nm", motor);
                    json.Plain("motor_at_lowest_voltage_nm", friction.MotorAtLowestNm!.Value);
                }
            });
        }
    }

    private static void Forming(JsonSheet json, FormingBrief forming) => json.Object("forming", () =>
    {
        json.SignedDeg("fold_tolerance_deg", forming.FoldRad.Value);
        json.Plain("thickness_tolerance_share", forming.ThicknessShare.Value);
        json.Mm("height_tolerance_mm", forming.HeightMm.Value);
        json.Mm("radius_tolerance_mm", forming.RadiusMm.Value);
        (string Key, FormingLimit Limit)[] all = [("fold_tolerance", forming.FoldRad), ("thickness_tolerance", forming.ThicknessShare), ("height_tolerance", forming.HeightMm), ("radius_tolerance", forming.RadiusMm)];
        json.Texts("assumed", all.Where(a => !a.Limit.IsGiven).Select(a => a.Key));
    });

    private static void Strip(JsonSheet json, PlacedStrip strip)
    {
        json.Text("name", strip.Form.Strip.Name);
        json.Text("net", strip.Net);
        json.Text("material", strip.Form.Material.Designation);
        json.Mm("blank_length_mm", strip.Form.Blank.LengthMm);
        json.Mm("seat_level_mm", strip.Form.SeatLevelMm);
        if (strip.Form.AutoLengthMm is double length)
        {
            json.Mm("auto_length_mm", length);
        }

        json.Objects("bends", strip.Form.Folds, f =>
        {
            json.Mm("at_mm", f.AtMm);
            json.SignedDeg("angle_deg", f.AngleRad);
            json.Mm("allowance_mm", f.AllowanceMm);
            json.Mm("radius_mm", f.RadiusMm);
            json.Plain("k_factor", f.K.Value);
            json.SignedDeg("overbend_deg", f.OverbendRad);
            json.Whole("order", f.Order);
        });
        json.Plain("modulus_gpa", strip.Form.Material.ModulusGpa.Value);
        if (strip.Spring is StripSpring spring)
        {
            Spring(json, spring);
        }

        if (strip.Sense is ArmSense sense)
        {
            json.Text("arm", sense switch { ArmSense.Trailing => "trailing", ArmSense.Leading => "leading", _ => "across" });
        }

        Electrics(json, strip.Electrics);
        if (strip.Life is WearLife life)
        {
            json.Object("wear_turns", () =>
            {
                json.Plain("dry", life.DryTurns);
                json.Plain("poor_lubricant", life.PoorTurns);
                json.Plain("good_lubricant", life.GoodTurns);
                json.Text("source", WearLife.Source);
            });
        }
    }

    private static void Spring(JsonSheet json, StripSpring spring)
    {
        json.Mm("deflection_mm", spring.DeflectionMm);
        json.Plain("force_n", spring.ForceN);
        json.Plain("force_least_n", spring.LeastForceN);
        json.Plain("force_most_n", spring.MostForceN);
        json.Plain("stiffness_n_per_mm", spring.StiffnessNPerMm);
        if (spring.WornForceN is double worn)
        {
            json.Plain("force_worn_n", worn);
        }

        json.Plain("stress_mpa", spring.StressMpa);
        json.Mm("stress_at_mm", spring.StressAtMm);
        json.Plain("stress_most_mpa", spring.WorstStressMpa);
        json.Plain("yield_factor", spring.YieldFactor);
        if (spring.FatigueFactor is double fatigue)
        {
            json.Plain("fatigue_factor", fatigue);
        }

        if (spring.WindUp is WindUp wind)
        {
            json.MmList("wind_up_mm", wind.LeastMm, wind.MostMm);
            json.Mm("wind_up_radial_mm", wind.MostRadialMm);
        }

        if (spring.Adjuster is StripAdjuster adjuster)
        {
            json.Object("adjuster", () =>
            {
                json.Mm("tip_per_turn_mm", adjuster.TipPerTurnMm);
                json.Plain("force_inner_n", adjuster.InnerForceN);
                json.Plain("force_outer_n", adjuster.OuterForceN);
                json.Plain("screw_force_n", adjuster.ScrewForceN);
                json.Plain("stress_mpa", adjuster.StressMpa);
            });
        }
    }

    private static void Electrics(JsonSheet json, StripElectrics electrics)
    {
        json.Plain("resistance_mohm", electrics.ResistanceOhm * 1000);
        Known("current_a", electrics.CurrentA);
        Known("drop_mv", electrics.DropV * 1000);
        Known("loss_mw", electrics.LossW * 1000);
        Known("density_a_per_mm2", electrics.DensityAPerMm2);
        Known("temperature_rise_k", electrics.TemperatureRiseK);
        if (electrics.ConstrictionOhm is double constriction)
        {
            json.Plain("constriction_mohm", constriction * 1000);
            Known("contact_mv", electrics.ContactV * 1000);
            Known("filmed_contact_mv", electrics.FilmedContactV * 1000);
            if (electrics.SofteningV is MaterialValue softening)
            {
                json.Plain("softening_mv", softening.Value * 1000);
            }
        }

        void Known(string name, double? value)
        {
            if (value is double known)
            {
                json.Plain(name, known);
            }
        }
    }
}
