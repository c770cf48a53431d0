using System.Collections.Frozen;
using System.Globalization;
using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>How wide and high live text becomes at most, in any sans-serif font that the reader may have.</summary>
/// <remarks>Per character, thousandths of the font size: advance width regular and bold, highest and lowest ink. Each is the
/// greatest over DejaVu Sans 2.37, Liberation Sans 1.07 (widths of Arial and Helvetica), Noto Sans, Roboto and Open Sans as packaged in
/// Debian 12, read from their hmtx and glyf tables. Kerning only narrows. Arrows are often taken from another font: counted as 1.04.</remarks>
internal static class LiveWidths
{
    /// <summary>Height of capitals, in font sizes, that live text is scaled by: common sans-serif fonts have 0.69 to 0.73.</summary>
    public const double CapitalShare = 0.72;

    // Characters outside the table come from fonts unknown here; the widest common case is a full-width one at 1.0.
    private static readonly Measure Unknown = new(1.1, 1.1, 1.0, -0.3);

    // Ideographs, kana and hangul stand in a square of one font size, 0.88 above the line and 0.12 below it; a little air (CJK fonts in general, from memory).
    private static readonly Measure Square = new(1, 1, 0.9, -0.14);

    // Letters such as f and j reach up to 0.05 beyond their advance width (DejaVu Sans, j).
    private const double Overhang = 0.05;

    private const string Space = "    ";

    private static readonly Lazy<FrozenDictionary<char, Measure>> Table = new(Read);

    // What most text is made of, at hand without looking it up.
    private static readonly Lazy<Measure[]> Plain = new(() => [.. Enumerable.Range(0, 128).Select(c => Looked((char)c))]);

    /// <summary>The most that a text takes along the line, mm, side bearings and overhang included.</summary>
    public static double WidthMm(string text, TextStyle style) => Box(text, style).Width;

    /// <summary>The box of a text whose line begins at the origin: as wide and high as it can become, overhang included.</summary>
    internal static Bounds Box(string text, TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(style);
        double width = 0;
        double high = 0;
        double low = 0;
        foreach (char c in text)
        {
            Measure m = Of(c);
            width += style.Weight == TextWeight.Heavy ? m.Bold : m.Regular;
            high = Math.Max(high, m.High);
            low = Math.Min(low, m.Low);
        }

        double size = style.FontSizeMm;
        return new Bounds(-Overhang * size, low * size, (width + Overhang) * size, high * size);
    }

    private static Measure Of(char c) => c < Plain.Value.Length ? Plain.Value[c] : Looked(c);

    private static Measure Looked(char c) =>
        Space.Contains(c, StringComparison.Ordinal) ? new(0.318, 0.349, 0, 0)
        : char.IsLowSurrogate(c) ? new(0, 0, 0, 0)
        : AlphabetMarks.IsMark(c) ? new(0, 0, 1, -0.3)
        : Table.Value.TryGetValue(c, out Measure known) ? known
        : c is (>= '\u2E80' and <= '\u9FFF') or (>= '\uAC00' and <= '\uD7AF') or (>= '\uF900' and <= '\uFAFF') or (>= '\uFF00' and <= '\uFF60') ? Square : Unknown;

    private static FrozenDictionary<char, Measure> Read()
    {
        const int cells = 5;
        string[] words = (Rows + "\n" + LiveWidthRows.OfScripts).Split((char[])[' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries);
        Dictionary<char, Measure> table = [];
        for (int i = 0; i < words.Length; i += cells)
        {
            double Share(int at) => int.Parse(words[i + at], CultureInfo.InvariantCulture) / 1000.0;
            table.Add(words[i][0], new(Share(1), Share(2), Share(3), Share(4)));
        }

        return table.ToFrozenDictionary();
    }

    private readonly record struct Measure(double Regular, double Bold, double High, double Low);

    // character, regular, bold, highest, lowest
    private const string Rows =
        """
        ! 401 457 729 -14  " 460 521 750 438  # 838 838 718 0  $ 637 696 826 -147  % 951 1002 742 -14  & 780 873 742 -14  ' 275 307 750 438  ( 391 458 802 -229
        ) 391 458 802 -229  * 552 545 760 278  + 838 838 627 0  , 318 380 189 -179  - 361 416 362 200  . 318 380 189 -14  / 413 414 729 -93  0 637 696 742 -14
        1 637 696 729 0  2 637 696 742 0  3 637 696 742 -14  4 637 696 729 0  5 637 696 729 -14  6 637 696 742 -14  7 637 696 729 0  8 637 696 742 -14
        9 637 696 742 -14  : 337 400 556 -14  ; 337 400 556 -179  < 838 838 625 30  = 838 838 520 142  > 838 838 625 30  ? 557 611 742 -14  @ 1016 1000 725 -221
        A 685 774 729 0  B 687 763 729 0  C 723 734 742 -14  D 771 831 729 0  E 667 684 729 0  F 611 684 729 0  G 778 821 742 -14  H 752 837 729 0  I 339 389 729 0
        J 552 559 729 -210  K 667 775 729 0  L 558 638 729 0  M 907 996 729 0  N 760 837 729 0  O 788 851 742 -14  P 667 733 729 0  Q 788 851 742 -197
        R 723 771 729 0  S 667 721 742 -14  T 611 683 729 0  U 732 813 729 -14  V 685 774 729 0  W 989 1104 729 0  X 686 771 729 0  Y 667 725 729 0  Z 686 726 729 0
        [ 391 458 828 -208  \ 411 423 729 -93  ] 391 458 828 -208  ^ 838 838 729 251  _ 557 557 0 -236  ` 578 607 800 578  a 613 675 560 -14  b 635 716 760 -14
        c 550 593 560 -14  d 635 716 760 -14  e 616 679 560 -14  f 353 436 765 0  g 635 716 560 -240  h 634 712 760 0  i 278 343 760 0  j 278 343 760 -240
        k 580 666 760 0  l 278 343 760 0  m 975 1042 560 0  n 634 712 560 0  o 612 688 560 -14  p 635 716 560 -240  q 635 716 560 -240  r 413 494 560 0
        s 521 596 560 -14  t 393 479 702 -10  u 634 712 560 -14  v 592 652 547 0  w 818 924 547 0  x 592 646 547 0  y 592 652 547 -240  z 525 583 547 0
        { 637 712 780 -208  | 551 551 764 -242  } 637 712 780 -208  ~ 838 838 436 184  ¡ 401 457 547 -182  ¢ 637 696 724 -153  £ 637 696 742 0  ¤ 714 693 618 -13
        ¥ 637 696 729 0  ¦ 551 551 760 -242  § 614 629 770 -242  ¨ 580 607 774 585  © 1000 1000 725 -10  ª 472 564 742 182  « 612 646 519 46  ¬ 838 838 444 69
        ® 1000 1000 725 -10  ¯ 553 553 858 629  ° 500 500 749 387  ± 838 838 628 0  ² 401 438 854 275  ³ 401 438 853 269  ´ 578 607 800 578  µ 637 736 547 -240
        ¶ 655 655 760 -129  · 318 380 442 218  ¸ 500 500 3 -240  ¹ 401 438 844 275  º 472 564 742 182  » 612 646 519 46  ¼ 970 1036 742 -14  ½ 970 1036 742 -14
        ¾ 970 1036 742 -14  ¿ 611 611 547 -196  À 685 774 944 0  Á 685 774 944 0  Â 685 774 944 0  Ã 685 774 931 0  Ä 685 774 927 0  Å 685 774 947 0
        Æ 1000 1085 729 0  Ç 723 734 742 -240  È 667 684 944 0  É 667 684 944 0  Ê 667 684 944 0  Ë 667 684 927 0  Ì 339 389 944 0  Í 339 389 944 0  Î 339 389 944 0
        Ï 339 389 927 0  Ð 775 838 729 0  Ñ 760 837 928 0  Ò 788 851 944 -14  Ó 788 851 944 -14  Ô 788 851 944 -14  Õ 788 851 928 -14  Ö 788 851 927 -14
        × 838 838 607 20  Ø 788 851 765 -46  Ù 732 813 944 -14  Ú 732 813 944 -14  Û 732 813 944 -14  Ü 732 813 927 -14  Ý 667 725 944 0  Þ 667 738 729 0
        ß 631 720 765 -14  à 613 675 800 -14  á 613 675 800 -14  â 613 675 800 -14  ã 613 675 778 -14  ä 613 675 774 -14  å 613 675 888 -14  æ 982 1048 560 -14
        ç 550 593 560 -240  è 616 679 800 -14  é 616 679 800 -14  ê 616 679 800 -14  ë 616 679 774 -14  ì 278 343 800 0  í 278 343 800 0  î 278 343 800 0
        ï 278 343 774 0  ð 612 688 772 -14  ñ 634 712 778 0  ò 612 688 800 -14  ó 612 688 800 -14  ô 612 688 800 -14  õ 612 688 778 -14  ö 612 688 774 -14
        ÷ 838 838 606 42  ø 612 688 594 -69  ù 634 712 800 -14  ú 634 712 800 -14  û 634 712 800 -14  ü 634 712 774 -14  ý 592 652 800 -240  þ 635 716 760 -240
        ÿ 592 652 774 -240  Œ 1070 1167 730 -10  œ 1023 1095 560 -14  Š 667 721 944 -14  š 521 596 800 -14  Ž 686 726 944 0  ž 525 583 800 0  Ÿ 667 725 927 0
        Ω 783 851 742 0  μ 637 736 547 -240  Δ 706 774 729 0  π 690 792 547 -19  σ 634 779 547 -14  ψ 761 837 759 -240  φ 725 792 558 -240  χ 578 646 553 -240
        – 657 632 406 211  — 1000 1000 406 211  ‘ 318 380 767 406  ’ 318 380 750 406  “ 519 658 767 406  ” 519 658 750 406  • 590 640 547 186  … 1000 1000 189 -14
        ≤ 838 838 655 0  ≥ 838 838 655 0  ≈ 838 838 532 110  √ 638 667 858 -20  ∞ 1029 1047 538 -10  ← 1040 1040 760 -120  ↑ 1040 1040 760 -120
        → 1040 1040 760 -120  ↓ 1040 1040 760 -120  ↻ 1040 1040 760 -120  ↺ 1040 1040 760 -120  ⌀ 603 603 519 -22  − 838 838 406 256  € 637 696 742 -14
        ™ 1000 1000 729 310  ‰ 1342 1440 742 -14
        """;
}

