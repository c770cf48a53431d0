namespace WheelDraft.Engineering;

/// <summary>Published values of copper alloy strip. Yield and tensile strength in MPa, radii over thickness.</summary>
internal static class CopperAlloys
{
    private const string PoissonSource = "flat-spring formulas, wide-strip rule with ν = 0.34 (tokaibane.com, flat springs)";
    private const string HolmHardness = "three times the yield strength (R. Holm, Electric Contacts, 1967)";
    private const string HolmSoftening = "R. Holm, Electric Contacts, 1967, table of softening voltages";
    private const string HandbookBend = "Machinery's Handbook, 90° bend rules";
    private const string ThinStrip = "; typical, for strip under 0.4 mm";

    // L = 0.55 T + 1.57 R, 0.64 T + 1.57 R, 0.71 T + 1.57 R, divided by a quarter turn.
    private static readonly MaterialValue SoftK = new(0.350, HandbookBend + ", soft brass and soft copper: 0.55 T + 1.57 R", true);
    private static readonly MaterialValue HalfHardK = new(0.407, HandbookBend + ", half-hard copper and brass: 0.64 T + 1.57 R", true);
    private static readonly MaterialValue HardK = new(0.452, HandbookBend + ", bronze, hard copper, spring stock: 0.71 T + 1.57 R", true);

    /// <summary>One temper as the tables give it; a radius of −1 is one that they do not give.</summary>
    private sealed record Row(string Temper, string Word, double Tensile, double Yield, double GoodWay, double BadWay);

    private sealed record Sheet(string Alloy, string Trade, string Strength, string? Bend)
    {
        public required MaterialValue Resistivity { get; init; }

        public required MaterialValue Modulus { get; init; }

        public required MaterialValue Density { get; init; }

        public MaterialValue? Softening { get; init; }

        public MaterialValue? Relaxes { get; init; }

        public string? Caution { get; init; }

        public required Func<string, MaterialValue> K { get; init; }

        public Func<string, MaterialValue?> Fatigue { get; init; } = _ => null;
    }

    internal static IEnumerable<Material> C11000() => Tempers(
        new("C11000", "copper Cu-ETP", "Cu-ETP strip data sheet (ASTM B152), scribd.com/document/651533098", "180° bend of oxygen-free copper strip, top-factories.com, used for C11000")
        {
            Resistivity = new(17.24, "C11000 technical data sheet: 1.724 µΩ·cm at 20 °C (100 % IACS)"),
            Modulus = new(116, "C11000 technical data sheets: 115 to 117 GPa, the middle"),
            Density = new(8.94, "C11000 technical data sheet"),
            Softening = new(0.12, HolmSoftening + ", copper (190 °C)", true),
            Relaxes = new(75, "copper loses force above about 75 to 100 °C", true),
            K = t => t is "O61" ? SoftK : t is "H01" or "H02" ? HalfHardK : HardK,
            Fatigue = t => t is "H04" ? new(90, "Copper Development Association, hard copper, 13 ksi at 3e8 cycles; a seller's sheet has about 90 MPa at 1e7", true) : null,
        },
        new("O61", "annealed", 180, 70, 0, 0),
        new("H01", "quarter hard", 235, 220, -1, -1),
        new("H02", "half hard", 255, 255, 1.0, 1.0),
        new("H03", "three-quarter hard", 285, 295, -1, -1),
        new("H04", "hard", 295, 310, 1.5, 1.5),
        new("H06", "extra hard", 325, 345, -1, -1),
        new("H08", "spring", 345, 360, -1, -1),
        new("H10", "extra spring", 360, 350, -1, -1));

    internal static IEnumerable<Material> C19400() => Tempers(
        new("C19400", "copper-iron CuFe2P", "ASM Handbook vol. 2 (1990), tables 44 to 46", null)
        {
            Resistivity = new(29, "ASM Handbook vol. 2: 60 to 68 % IACS by temper; worked out at 60 %"),
            Modulus = new(119, "ASM Handbook vol. 2 and alloy guide table: 117 to 121 GPa, the middle"),
            Density = new(8.9, "alloy guide table, 0.322 lb/in³ (metalmart.com)"),
            K = t => t is "O61" ? SoftK : t is "H02" ? HalfHardK : HardK,
        },
        new("O61", "annealed", 325, 170, -1, -1),
        new("H02", "half hard", 405, 360, -1, -1),
        new("H04", "hard", 455, 405, -1, -1));

    internal static IEnumerable<Material> C26000() => Tempers(
        new("C26000", "cartridge brass CuZn30", "C26000 (ASTM B36) strip data, olinbrass.com", "C26000 (ASTM B36) strip data, olinbrass.com" + ThinStrip)
        {
            Resistivity = new(61.6, "C26000 (ASTM B36) strip data: 6.16 µΩ·cm, 28 % IACS"),
            Modulus = new(111, "C26000 (ASTM B36) strip data and others: 110 to 112 GPa, the middle"),
            Density = new(8.53, "C26000 (ASTM B36) strip data"),
            Softening = new(0.1, HolmSoftening + ", about, for brass CuZn40", true),
            Relaxes = new(75, "brass loses force above about 75 to 100 °C", true),
            K = t => t is "O61" ? SoftK : t is "H01" or "H02" ? HalfHardK : HardK,
            Fatigue = t => t is "H04" ? new(140, "20 to 22 ksi at 1e8 cycles, the least", true) : null,
        },
        new("O61", "annealed", 310, 145, -1, -1),
        new("H01", "quarter hard", 340, 230, -1, 0.3),
        new("H02", "half hard", 395, 350, 0.5, 0.5),
        new("H03", "three-quarter hard", 440, 425, 1.0, 1.3),
        new("H04", "hard", 490, 495, 1.3, 1.8),
        new("H06", "extra hard", 570, 570, 1.8, 3.0),
        new("H08", "spring", 625, 595, 3.0, 5.0),
        new("H10", "extra spring", 655, 615, -1, -1));

    internal static IEnumerable<Material> C51000() => Tempers(
        new("C51000", "phosphor bronze CuSn5", "C51000 (ASTM B103) strip data, olinbrass.com", "C51000 (ASTM B103) strip data, olinbrass.com" + ThinStrip)
        {
            Resistivity = new(115, "strip data, 15 % IACS: 11.5 µΩ·cm; others have 8.7 (20 %), the greater stands"),
            Modulus = new(110, "C51000 (ASTM B103) strip data, olinbrass.com"),
            Density = new(8.86, "C51000 (ASTM B103) strip data, olinbrass.com"),
            Relaxes = new(100, "phosphor bronze loses force above about 100 to 105 °C", true),
            K = _ => HardK,
            Fatigue = t => t switch
            {
                "H04" => new(170, "Copper Development Association alloy page C51000 and a seller's page: 25 to 27 ksi at 1e8 cycles, the least"),
                "H08" => new(150, "Copper Development Association alloy page C51000: 22 ksi at 1e8 cycles"),
                _ => null,
            },
        },
        new("O61", "annealed", 315, 165, -1, -1),
        new("H01", "quarter hard", 340, 255, -1, -1),
        new("H02", "half hard", 400, 395, -1, 0.5),
        new("H03", "three-quarter hard", 470, 470, 0.5, 1.0),
        new("H04", "hard", 525, 560, 1.0, 1.5),
        new("H06", "extra hard", 605, 640, 1.5, 2.5),
        new("H08", "spring", 655, 690, 2.0, 5.0),
        new("H10", "extra spring", 690, 715, -1, -1));

    internal static IEnumerable<Material> C17200()
    {
        Sheet sheet = new("C17200", "beryllium copper CuBe2", "C17200 table, jsktraders.com, and beryllium copper features, ngk-insulators.com", null)
        {
            Resistivity = new(76.8, "C17200 wire data, lfa-wire.com: 7.68 µΩ·cm aged, 22 to 25 % IACS"),
            Modulus = new(127, "beryllium copper features, ngk-insulators.com"),
            Density = new(8.3, "C17200 data: 8.26 to 8.35, the middle"),
            Relaxes = new(150, "beryllium copper loses force above about 150 °C", true),
            Caution = "Dust of beryllium copper is toxic: do not saw, file or grind it outside a workshop equipped for it.",
            K = _ => HardK,
            Fatigue = t => t is "TF00" ? new(260, "38 to 45 ksi at 1e8 cycles, the least", true) : null,
        };
        MaterialValue unaged = new(115, "not aged: 15 to 19 % IACS, the greater resistivity", true);
        return Tempers(
            sheet,
            new("TB00", "solution annealed", 483, 221, -1, -1),
            new("TD01", "quarter hard", 552, 483, -1, -1),
            new("TD02", "half hard", 634, 565, -1, -1),
            new("TF00", "annealed and aged", 1100, 960, -1, -1))
            .Select(m => m.Temper is "TF00" ? m : m with { ResistivityNanoOhmM = unaged });
    }

    private static IEnumerable<Material> Tempers(Sheet sheet, params Row[] rows) =>
        rows.Select((row, i) => new Material($"{sheet.Alloy}-{row.Temper}", $"{sheet.Trade}, {row.Word}")
        {
            ResistivityNanoOhmM = sheet.Resistivity,
            ModulusGpa = sheet.Modulus,
            PoissonRatio = new(0.34, PoissonSource),
            DensityGPerCm3 = sheet.Density,
            YieldMpa = new(row.Yield, sheet.Strength),
            TensileMpa = new(row.Tensile, sheet.Strength),
            FatigueMpa = sheet.Fatigue(row.Temper),
            HardnessMpa = new(3 * row.Yield, HolmHardness, true),
            SofteningV = sheet.Softening,
            LeastRadiusGoodWay = Radius(sheet, rows.Skip(i), r => r.GoodWay >= 0 ? r.GoodWay : r.BadWay),
            LeastRadiusBadWay = Radius(sheet, rows.Skip(i), r => r.BadWay),
            TightBendK = sheet.K(row.Temper),
            RelaxesAboveC = sheet.Relaxes,
            Caution = sheet.Caution,
        });

    // A temper without a value of its own takes that of the next harder one listed, which needs no smaller a radius; a bend the good
    // way takes the bad way's value where that alone is given. Beyond the hardest listed nothing is known.
    private static MaterialValue? Radius(Sheet sheet, IEnumerable<Row> fromHere, Func<Row, double> way)
    {
        bool own = true;
        foreach (Row row in fromHere)
        {
            if (way(row) >= 0)
            {
                return new(way(row), sheet.Bend + (own ? "" : $"; the value of temper {row.Temper}, the next harder one listed"));
            }

            own = false;
        }

        return null;
    }
}
