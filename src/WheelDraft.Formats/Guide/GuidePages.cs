using WheelDraft.Drawing;
using WheelDraft.Engineering;
using WheelDraft.Formats.Pdf;
using WheelDraft.Formats.Raster;
using WheelDraft.Geometry;

namespace WheelDraft.Formats.Guide;

/// <summary>The building guide as pages to print: words and tables upright, each picture on a page of its own behind its chapter.</summary>
internal sealed class GuidePages
{
    private const double MarginMm = 18;
    private const double FootMm = 14;
    private const double GapMm = 4;
    private const double IndentMm = 7;

    private static readonly TextStyle Body = TextStyle.Small;
    private static readonly TextStyle Heading = TextStyle.Title;
    private static readonly TextStyle Strong = new(2.5, TextWeight.Heavy);

    private readonly BuildingGuide _guide;
    private readonly IReadOnlyList<Sheet> _sheets;
    private readonly PaperSize _paper;
    private readonly List<GuidePage> _pages = [];
    private double _y;

    private GuidePages(BuildingGuide guide, IReadOnlyList<Sheet> sheets, PaperSize paper) => (_guide, _sheets, _paper) = (guide, sheets, paper);

    /// <summary>The bytes of the PDF.</summary>
    /// <param name="guide">The guide.</param>
    /// <param name="sheets">The sheets that its pictures are looked up in; one that is not there is left out.</param>
    /// <param name="paper">The paper, upright.</param>
    /// <param name="of">Whose mark, number and maker it carries, and the font for letters that the stroke alphabet lacks.</param>
    public static byte[] Write(BuildingGuide guide, IReadOnlyList<Sheet> sheets, PaperSize paper, (Brief Brief, ScriptFont? Font) of)
    {
        GuidePages pages = new(guide, sheets, paper);
        pages.Flow();
        return PdfWriter.Pages(new PdfOptions(guide.Title) { Theme = Theme.Print, Subject = "How a contact timer is built", Number = of.Brief.DrawingNumber, Author = of.Brief.Office.CreatedBy, Font = of.Font }, pages.Finished(of.Brief.InputMark));
    }

    // Words on a page, or a picture; nothing else stands there but the foot.
    private sealed record GuidePage(SheetBuilder Sheet, GroupPen Pen, Sheet? Picture)
    {
        /// <summary>The chapters that begin on it.</summary>
        public List<string> Chapters { get; } = [];
    }

    private double WidthMm => _paper.WidthMm - (2 * MarginMm);

    private GroupPen Pen => _pages[^1].Pen;

    private void Flow()
    {
        Turn();
        foreach (string line in TextFit.Into(_guide.Title, WidthMm, new TextStyle(7, TextWeight.Heavy), 2).Lines)
        {
            Line(line, new TextStyle(7, TextWeight.Heavy), MarginMm, 9);
        }

        foreach (GuideChapter chapter in _guide.Chapters)
        {
            Chapter(chapter);
        }
    }

    private void Chapter(GuideChapter chapter)
    {
        // A heading stays with what it heads.
        const double keepMm = 40;
        Need(keepMm);
        _y -= GapMm;
        _pages[^1].Chapters.Add(chapter.Heading);
        Line(chapter.Heading, Heading, MarginMm, Heading.HeightMm);
        foreach (GuideBlock block in chapter.Blocks)
        {
            _y -= GapMm;
            Add(block);
        }

        GuidePicture[] pictures = [.. chapter.Blocks.OfType<GuidePicture>().Where(p => Find(p) is not null)];
        foreach (GuidePicture picture in pictures)
        {
            Picture(picture, Find(picture)!);
        }

        if (pictures.Length > 0)
        {
            Turn();
        }
    }

    private Sheet? Find(GuidePicture picture) => _sheets.FirstOrDefault(s => string.Equals(s.Words.Name, picture.Sheet, StringComparison.Ordinal));

    private void Add(GuideBlock block)
    {
        switch (block)
        {
            case GuideWords words:
                Paragraph(words.Words, MarginMm, Body);
                break;
            case GuideList list:
                List(list);
                break;
            case GuideCautions cautions:
                Cautions(new CautionBlock(cautions.Items));
                break;
            case GuideTable table:
                Table(table);
                break;
            case GuidePicture picture when Find(picture) is not null:
                Paragraph($"See the picture behind this chapter: {picture.Caption}.", MarginMm, TextStyle.Caption);
                break;
            default:
                break;
        }
    }

    private void List(GuideList list)
    {
        for (int i = 0; i < list.Items.Count; i++)
        {
            // The number and the first line stay together.
            Need(2 * Body.HeightMm * Lettering.LinePitch);
            string mark = list.IsNumbered ? $"{Wording.Number(i + 1, 0)}." : "–";
            Pen.Text(mark, new(new(MarginMm, _y), TextAlong.Start, TextAcross.Top), Body);
            Paragraph(list.Items[i], MarginMm + IndentMm, Body);
            _y -= 1;
        }
    }

    private void Cautions(CautionBlock block)
    {
        Need(block.HeightMm(WidthMm));
        _y = block.Draw(Pen, new(MarginMm, _y), WidthMm).MinY;
    }

    private void Table(GuideTable table)
    {
        SheetTable drawn = new(table.Columns, table.Rows) { Title = table.Title };
        const double withRowsMm = 30;
        Need(withRowsMm);
        Paragraph(table.Title + ":", MarginMm, Strong);
        _y -= 1;
        for (int row = 0; row < table.Rows.Count;)
        {
            (Bounds area, int next) = drawn.Draw(Pen, new(MarginMm, FootMm + GapMm, _paper.WidthMm - MarginMm, _y), row);
            if (next == row)
            {
                if (_y == TopMm)
                {
                    throw new NoRoomException($"A row of the table '{table.Title}' is higher than a page.");
                }

                Turn();
                continue;
            }

            (row, _y) = (next, area.MinY);
        }

        _y -= 2;
    }

    private void Paragraph(string words, double left, TextStyle style)
    {
        foreach (string line in TextFit.Wrap(words, _paper.WidthMm - MarginMm - left, style))
        {
            Line(line, style, left, style.HeightMm * (Lettering.LinePitch - 1));
        }
    }

    private void Line(string text, TextStyle style, double left, double gapMm)
    {
        Need(style.HeightMm);
        Pen.Text(text, new(new(left, _y), TextAlong.Start, TextAcross.Top), style);
        _y -= style.HeightMm + gapMm;
    }

    private double TopMm => _paper.HeightMm - MarginMm;

    private void Need(double heightMm)
    {
        if (_y - heightMm < FootMm + GapMm && _y < TopMm)
        {
            Turn();
        }
    }

    private void Turn()
    {
        _pages.Add(Fresh(_paper, null));
        _y = TopMm;
    }

    // A page without anything on it is not printed.
    private void Picture(GuidePicture picture, Sheet sheet)
    {
        PaperSize lying = new(_paper.Name, _paper.HeightMm, _paper.WidthMm);
        GuidePage page = Fresh(sheet.WidthMm > sheet.HeightMm ? lying : _paper, sheet);
        page.Pen.Text(picture.Caption, new(new(MarginMm, page.Sheet.Size.HeightMm - UnprintableMm), TextAlong.Start, TextAcross.Top), TextStyle.Label);
        _pages.Add(page);
    }

    // What printers leave white at the edge of the paper, mm (common practice, no source).
    private const double UnprintableMm = 8;

    private GuidePage Fresh(PaperSize size, Sheet? picture)
    {
        string number = Wording.Number(_pages.Count + 1, 0);
        SheetBuilder sheet = new(new($"build-{number}", $"{_guide.Title}, page {number}", "A page of the building guide."), size);
        return new(sheet, sheet.Group("words", "Words", "words"), picture);
    }

    private IEnumerable<PdfPage> Finished(string input)
    {
        GuidePage[] filled = [.. _pages.Where(p => p.Picture is not null || !p.Pen.IsEmpty)];
        foreach ((GuidePage page, int i) in filled.Select((p, i) => (p, i)))
        {
            string foot = $"{_guide.Title}: page {Wording.Number(i + 1, 0)} of {Wording.Number(filled.Length, 0)}{(input.Length > 0 ? $", input {input}" : "")}";
            page.Pen.Text(TextFit.Shortened(foot, page.Sheet.Size.WidthMm - (2 * MarginMm), Body), new(new(MarginMm, UnprintableMm)), Body);
            Sheet words = page.Sheet.Build();
            Bounds room = new(UnprintableMm, FootMm, words.WidthMm - UnprintableMm, words.HeightMm - FootMm);
            yield return new(page.Sheet.Size, painter => Paint(painter, words, page.Picture, room)) { Entries = page.Picture is Sheet picture ? [picture.Words.Title] : page.Chapters };
        }
    }

    private static void Paint(PdfPainter painter, Sheet words, Sheet? picture, Bounds room)
    {
        painter.Paint(words);
        if (picture is not null)
        {
            painter.PaintInto(picture, room);
        }
    }
}
