using WheelDraft.Engineering;

namespace WheelDraft.Formats.Parameters;

/// <summary>Values of a checked table in the units of a brief.</summary>
internal static class Values
{
    extension(CheckedTable table)
    {
        /// <summary>A quantity that is there or has a default, in its base unit.</summary>
        public double Base(string key) => table.Quantity(key)!.Value.Value;

        /// <summary>A quantity in its base unit; null when it is left out or a word such as auto.</summary>
        public double? BaseOrNull(string key) => table.Quantity(key)?.Value;

        /// <summary>An angle that is there or has a default.</summary>
        public double Rad(string key) => table.Quantity(key)!.Value.AngleRad;

        /// <summary>An angle; null when it is left out or a word such as auto.</summary>
        public double? RadOrNull(string key) => table.Quantity(key)?.AngleRad;

        /// <summary>A grade of insulation; null for none.</summary>
        public Insulation? Insulation(string key) => table.Text(key) switch
        {
            "functional" => Engineering.Insulation.Functional,
            "basic" => Engineering.Insulation.Basic,
            "supplementary" => Engineering.Insulation.Supplementary,
            "reinforced" => Engineering.Insulation.Reinforced,
            _ => null,
        };

        /// <summary>The material group, given or from the comparative tracking index (IEC 60664-1: I from 600, II from 400, IIIa from 175, IIIb from 100).</summary>
        public MaterialGroup Group() => table.Number("cti") is { } cti
            ? cti >= 600 ? MaterialGroup.I : cti >= 400 ? MaterialGroup.II : cti >= 175 ? MaterialGroup.IIIa : MaterialGroup.IIIb
            : table.Text("material_group") switch
            {
                "I" => MaterialGroup.I,
                "II" => MaterialGroup.II,
                "IIIa" => MaterialGroup.IIIa,
                _ => MaterialGroup.IIIb,
            };

        /// <summary>The texts of a list.</summary>
        public IReadOnlyList<string> Texts(string key) => [.. table.Items(key).Select(i => i.Text!)];
    }
}
