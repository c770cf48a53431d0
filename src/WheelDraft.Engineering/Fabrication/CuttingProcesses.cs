namespace WheelDraft.Engineering;

/// <summary>The list of cutting processes for 0.03 to 2 mm copper. Adding one is adding a row.</summary>
/// <remarks>Where sources give a band, the value taken is the usual one, and for limits the more careful end, as the row's source says.</remarks>
internal static class CuttingProcesses
{
    /// <summary>Every process, in the order in which it is listed to a person.</summary>
    public static IReadOnlyList<CuttingProcess> All =>
        [FibreLaser, Waterjet, PhotoEtch, WireEdm, Router, BoardEtch, BoardMill, Fretsaw];

    /// <summary>The process of a name, or null.</summary>
    /// <param name="name">Name in parameter files, exact.</param>
    public static CuttingProcess? Find(string name) => All.FirstOrDefault(p => string.Equals(p.Name, name, StringComparison.Ordinal));

    private static ThicknessRule Fixed(double mm) => new(0, mm);

    /// <summary>0.20, 0.25 and 0.30 mm at 0.035, 0.070 and 0.105 mm of copper: a straight line of 0.05 in 0.035.</summary>
    private static ThicknessRule BoardGap => new(0.05 / 0.035, 0.2, 0.15);

    private static CuttingProcess FibreLaser => new("fibre-laser", 0.2, Fixed(0.1), new(1, 0.5), new(1, 0.5), new(1, 0.5), Fixed(0.1))
    {
        ThinnestMm = 0.1,
        ThickestMm = 3,
        Source = "design guides of laser shops (layerx3d.in, snijlab.nl, gosnapcut.com, cut-tec.co.uk): kerf 0.1 to 0.3, usually 0.2 mm; "
            + "holes 0.7 to 1.5 thickness by shop; corner radius about half the kerf; one shop stops at 3 mm copper",
        Remark = "copper reflects and conducts: a rough, discoloured edge; not every laser shop takes it",
        Pace = new(15, 80, 0.5),
        GrateMm = 25,
        WarpsBeyond = 12,
    };

    private static CuttingProcess Waterjet => new("waterjet", 1.0, Fixed(0.13), Fixed(2), Fixed(1), Fixed(2), Fixed(0.5))
    {
        Source = "design guides of waterjet shops (metalcreature.com, bigbluesaw.com, waterjets.org): kerf 0.76 to 1.2 mm; slot 1.5 to 2 times the stream; "
            + "web 1 mm; inside radius 0.5 mm; typical tolerance 0.13 mm",
        Remark = "thin sheet bends and flutters; the cut widens a little to the bottom; small windows show the mark of the start",
        Pace = new(3, 12, 5),
        GrateMm = 25,
        WarpsBeyond = 15,
    };

    private static CuttingProcess PhotoEtch => new("photo-etch", 0, new(0.1, 0.01), new(1.1, 0.15), new(1, 0.15), new(1.1, 0.15), new(1, 0))
    {
        ThinnestMm = 0.01,
        ThickestMm = 1.5,
        Source = "design guides of etchers (photo-etch.co.uk, etchform.com, techetch.com, metaletching.com, aculineetch.com, etchitmn.com): "
            + "tolerance 10 % of thickness, at least 0.01 mm; openings 1.1 thickness; webs about one thickness; inside corners one thickness; the etcher allows for undercut",
        Remark = "an edge with a ridge of about a fifth of the thickness; no burrs and no stress; parts left on tabs keep their places best",
    };

    private static CuttingProcess WireEdm => new("wire-edm", 0.3, Fixed(0.01), Fixed(0.3), Fixed(0.2), Fixed(0.3), Fixed(0.15))
    {
        Source = "design guides of wire-erosion shops (xmake.com, tongrencnc.com, mecvil.com, laser-cut.eu): 0.25 mm wire and spark gap, slot 0.3 mm; "
            + "corner 0.13 to 0.15 mm; standard tolerance 0.01 mm; every closed window needs a start hole",
        Remark = "slow, no force on the part; every window needs a hole to thread the wire through",
        Pace = new(0.05, 0.3, 60),
    };

    private static CuttingProcess Router => new("router", 1.0, Fixed(0.1), Fixed(1), Fixed(1), Fixed(1), Fixed(0.5))
    {
        Source = "practice with a 1 mm cutter: slot the cutter's diameter, corner its radius; tolerance 0.1 mm (pmplastics.com.au); give own numbers for another cutter",
        Remark = "the sheet must be held down or the part kept by tabs; burrs",
        Pace = new(3, 15, 2),
        WarpsBeyond = 10,
    };

    private static CuttingProcess BoardEtch => new("board-etch", 0, Fixed(0.04), BoardGap, BoardGap, Fixed(0.8), Fixed(0))
    {
        ThinnestMm = 0.01,
        ThickestMm = 0.105,
        Source = "capability pages of board makers (2cisa.com, pcb-infotech.com, elprint.com): gap and track 0.2 mm at 35 um, 0.25 mm at 70 um, about 0.3 mm at 105 um "
            + "of copper, and straight between; tolerance 20 % of the least track; routed openings 0.8 mm",
        Remark = "copper of a clad board wears through: look at the wear life in the report; keep 0.3 mm from the board's edge",
    };

    private static CuttingProcess BoardMill => new("board-mill", 0.2, Fixed(0.05), Fixed(0.3), Fixed(0.3), Fixed(0.8), Fixed(0.1))
    {
        ThinnestMm = 0.01,
        ThickestMm = 0.105,
        Source = "from memory: V-bit 0.1 to 0.3 mm wide at depth; drilled holes 0.8 mm; check with the machine at hand",
        Remark = "creepage runs over milled edges of the board",
        Pace = new(3, 15, 2),
    };

    private static CuttingProcess Fretsaw => new("fretsaw", 0, Fixed(0.3), Fixed(1), Fixed(1), Fixed(1), Fixed(0.5))
    {
        Source = "practice of hand sawing (nickbaines.me.uk; handcrafted-gold-jewelry.com): cut outside the line and file to it, so the template is true size; "
            + "0.2 to 0.3 mm; a blade turns in about 0.5 mm; opening, web and hole about 1 mm",
        Remark = "at least three teeth of the blade on the sheet; drill before sawing; cut outside the line and file to it",
        Pace = new(0.1, 0.5, 120),
        WarpsBeyond = 10,
    };
}
