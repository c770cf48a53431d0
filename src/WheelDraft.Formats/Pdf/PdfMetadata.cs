using System.Security;

namespace WheelDraft.Formats.Pdf;

/// <summary>What a PDF says of itself: the information dictionary, and the same as XMP (ISO 16684-1) for programs that read that.</summary>
internal static class PdfMetadata
{
    private const string Program = "WheelDraft";

    /// <summary>The information dictionary; the drawing number stands under a name of its own and as a keyword, where every reader shows it.</summary>
    public static string Information(PdfOptions options)
    {
        string number = string.IsNullOrEmpty(options.Number) ? "" : $"/Keywords{PdfFile.Text(options.Number)}/DrawingNumber{PdfFile.Text(options.Number)}";
        string subject = string.IsNullOrEmpty(options.Subject) ? "" : $"/Subject{PdfFile.Text(options.Subject)}";
        string author = options.Author.Length == 0 ? "" : $"/Author{PdfFile.Text(options.Author)}";
        return $"<</Title{PdfFile.Text(options.Title)}{subject}{author}{number}/Creator({Program})/Producer({Program})>>";
    }

    /// <summary>The packet of XMP.</summary>
    public static string Packet(PdfOptions options)
    {
        string number = string.IsNullOrEmpty(options.Number) ? "" : $"<dc:identifier>{SecurityElement.Escape(options.Number)}</dc:identifier>";
        string subject = string.IsNullOrEmpty(options.Subject) ? "" : $"<dc:description>{Alternative(options.Subject)}</dc:description>";
        string author = options.Author.Length == 0 ? "" : $"<dc:creator><rdf:Seq><rdf:li>{SecurityElement.Escape(options.Author)}</rdf:li></rdf:Seq></dc:creator>";
        return $"""
            <?xpacket begin="" id="W5M0MpCehiHzreSzNTczkc9d"?>
            <x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
            <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">
            <dc:format>application/pdf</dc:format><dc:title>{Alternative(options.Title)}</dc:title>{subject}{author}{number}
            <dc:language><rdf:Bag><rdf:li>{SecurityElement.Escape(options.Language)}</rdf:li></rdf:Bag></dc:language>
            <xmp:CreatorTool>{Program}</xmp:CreatorTool><pdf:Producer>{Program}</pdf:Producer>
            </rdf:Description></rdf:RDF></x:xmpmeta>
            <?xpacket end="r"?>
            """;
    }

    private static string Alternative(string words) => $"<rdf:Alt><rdf:li xml:lang=\"x-default\">{SecurityElement.Escape(words)}</rdf:li></rdf:Alt>";
}
