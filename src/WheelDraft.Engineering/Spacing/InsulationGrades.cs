namespace WheelDraft.Engineering;

/// <summary>Grades of insulation that do not protect a person: functional insulation only makes the equipment work.</summary>
/// <remarks>Functional insulation is no protection against electric shock (IEC 60664-1:2020, definitions of functional and basic insulation, from
/// memory). Basic insulation protects while nothing fails; a touchable part that is not earthed asks for double or reinforced insulation, or for
/// supplementary insulation besides the basic one (IEC 61140:2016, clause 5, from memory). A definition that is silent is taken on the safe side:
/// what the supply is made of stands nowhere in the file, so that extra-low voltage alone is a warning and no all-clear.</remarks>
internal static class InsulationGrades
{
    /// <summary>Findings about the grades that the file asks to earthed and to touchable parts.</summary>
    public static IReadOnlyList<Finding> Of(Brief brief) => [.. ToTouchable(brief), .. ToEarthed(brief)];

    private static IEnumerable<Finding> ToTouchable(Brief brief)
    {
        TextPlace place = brief.PlaceOf("spacing.to_touchable");
        string volts = Wording.Volts(Math.Round(brief.Supply.HighestAtToleranceV, 1));
        switch (brief.Spacing.ToTouchable)
        {
            case Insulation.Functional when brief.Supply.IsExtraLow:
                yield return Finding.Warning("spacing.touchable", $"Insulation to touchable parts is functional, which protects nobody: right only where the {volts} come from a safety transformer (SELV or PELV) and stay apart from the mains everywhere. Dry rooms may leave up to 25 V bare, wet ones 12 V (IEC 60364-4-41, from memory); else write to_touchable = \"reinforced\".", place);
                break;
            case Insulation.Functional:
                yield return Finding.Error("spacing.touchable", $"Insulation to touchable parts is functional, which protects nobody: at {volts} whoever touches the part may be killed. Write to_touchable = \"reinforced\"; own_responsibility does not lift this.", place);
                break;
            case Insulation.Basic or Insulation.Supplementary when !brief.Supply.IsExtraLow && HasTouchable(brief):
                yield return Finding.Warning("spacing.touchable", $"Insulation to touchable parts is {RuleWords.Grade(brief.Spacing.ToTouchable)} alone, which protects only while nothing fails: at {volts} a touchable part that is not earthed needs double or reinforced insulation. Write to_touchable = \"reinforced\", or earth the part (kind = \"earthed\").", place);
                break;
            default:
                break;
        }
    }

    private static IEnumerable<Finding> ToEarthed(Brief brief)
    {
        if (brief.Spacing.ToEarthed != Insulation.Functional)
        {
            yield break;
        }

        TextPlace place = brief.PlaceOf("spacing.to_earthed");
        string found = "Insulation to earthed parts is functional, where a person is protected only by basic insulation and a sound protective conductor together";
        yield return brief.Spacing.OwnResponsibility is string words
            ? Finding.Warning("spacing.earthed", $"{found}. Taken on the person's own responsibility: \"{words}\".", place)
            : brief.Supply.IsExtraLow
            ? Finding.Warning("spacing.earthed", $"{found}: right only where the {Wording.Volts(Math.Round(brief.Supply.HighestAtToleranceV, 1))} come from a safety transformer (SELV or PELV). Else write to_earthed = \"basic\".", place)
            : Finding.Error("spacing.earthed", $"{found}. Write to_earthed = \"basic\", or say in [spacing] own_responsibility what makes less enough.", place);
    }

    private static bool HasTouchable(Brief brief) =>
        brief.Wheel.Shaft == ShaftKind.Touchable || brief.Parts.Any(p => p.Kind == PartKind.Touchable);
}
