using WheelDraft.Geometry;

namespace WheelDraft.Drawing;

/// <summary>Marks above, below and beside letters, and which characters are a letter with a mark.</summary>
/// <remarks>Which characters these are: the canonical decompositions of Unicode, from memory. Marks find their place by the height of what they stand on, so that
/// any mark stands on any letter, and a second above the first.</remarks>
internal static class AlphabetMarks
{
    // Where marks begin, tenths: clear of small letters by 0.7, of capitals by 0.6, of a mark by 1.2.
    private const double AboveSmall = 7.7;
    private const double AboveCapital = 10.6;
    private const double AboveMark = 1.2;
    private const double SmallTop = 7;
    private const double CapitalTop = 9.2;

    private static readonly Lazy<Dictionary<int, (int Letter, string Mark)>> Pairs = new(ReadPairs);

    /// <summary>The letter and the mark that a character is put together from, or null.</summary>
    public static (int Letter, string Mark)? Composed(int codePoint) =>
        codePoint > '~' && Pairs.Value.TryGetValue(codePoint, out (int Letter, string Mark) pair) ? pair : null;

    /// <summary>Whether a character is a mark that stands on the letter before it.</summary>
    public static bool IsMark(int codePoint) => codePoint is >= 0x300 and <= 0x345 && NameOf(codePoint) is not null;

    /// <summary>What a letter is under marks: i and j lose their dots.</summary>
    public static int Bare(int letter) => letter switch { 'i' or 'і' => 'ı', 'j' or 'ј' => 'ȷ', _ => letter };

    /// <summary>A letter with a mark that follows it.</summary>
    public static Glyph On(Glyph letter, char mark) => On(letter, NameOf(mark)!);

    /// <summary>A letter with a mark of a name.</summary>
    public static Glyph On(Glyph letter, string mark)
    {
        if (mark is "same")
        {
            return letter;
        }

        (string source, MarkPlace place) = Sources(mark);
        double top = letter.Span?.MaxY ?? 0;
        double right = letter.Width - 1;
        return letter.With(Glyph.Parse(source), place switch
        {
            MarkPlace.Above => new Vector(right / 2, top > CapitalTop ? top + AboveMark : top > SmallTop ? AboveCapital : AboveSmall),
            MarkPlace.Below => new Vector(right / 2, Math.Min(letter.Span?.MinY ?? 0, 0)),
            MarkPlace.Under => new Vector(right / 2, 0),
            MarkPlace.Foot => new Vector(Math.Max(right - 0.9, right / 2), 0),
            MarkPlace.RightTop => new Vector(right, Math.Min(top, 9)),
            _ => new Vector(0, 0),
        });
    }

    private enum MarkPlace
    {
        Above,
        Below,
        Under,
        Foot,
        RightTop,
        Before,
    }

    // About the middle. Above: from their lowest point; below: they hang from the line.
    private static (string Source, MarkPlace Place) Sources(string mark) => mark switch
    {
        "grave" => ("0;0.6,0 -0.7,1.7", MarkPlace.Above),
        "acute" => ("0;-0.6,0 0.7,1.7", MarkPlace.Above),
        "circumflex" => ("0;-1.2,0 0,1.6 1.2,0", MarkPlace.Above),
        "caron" => ("0;-1.2,1.6 0,0 1.2,1.6", MarkPlace.Above),
        "tilde" => ("0;-1.6,0.3 -0.8,1.3~0.6 0.8,0.3~0.6 1.6,1.3", MarkPlace.Above),
        "diaeresis" => ("0;. -1.1,0.6;. 1.1,0.6", MarkPlace.Above),
        "ring" => ("0;o 0,0.9 0.9", MarkPlace.Above),
        "macron" => ("0;-1.4,0.5 1.4,0.5", MarkPlace.Above),
        "breve" => ("0;-1.3,1.6 -1.3,0~1.25 1.3,0~1.25 1.3,1.6", MarkPlace.Above),
        "dot" => ("0;. 0,0.6", MarkPlace.Above),
        "double-acute" => ("0;-1.4,0 -0.4,1.7;0.4,0 1.4,1.7", MarkPlace.Above),
        "double-grave" => ("0;-0.4,0 -1.4,1.7;1.4,0 0.4,1.7", MarkPlace.Above),
        "hook" => ("0;-0.8,1.7 0.8,1.7~0.4 0.8,0.8~0.4 0,0.8 0,0", MarkPlace.Above),
        "turned-comma" => ("0;0.2,0 -0.3,1.5", MarkPlace.Above),
        "cedilla" => ("0;0,0 0,-1 0.9,-1~0.9 0.9,-2.9~0.9 -0.9,-2.9", MarkPlace.Below),
        "comma" => ("0;0.3,-1.3 -0.3,-2.8", MarkPlace.Below),
        "dot-below" => ("0;. 0,-1.8", MarkPlace.Below),
        "diaeresis-below" => ("0;. -1.1,-1.8;. 1.1,-1.8", MarkPlace.Below),
        "ring-below" => ("0;o 0,-2 0.8", MarkPlace.Below),
        "circumflex-below" => ("0;-1.2,-2.9 0,-1.4 1.2,-2.9", MarkPlace.Below),
        "tilde-below" => ("0;-1.6,-2.5 -0.8,-1.5~0.6 0.8,-2.5~0.6 1.6,-1.5", MarkPlace.Below),
        "breve-below" => ("0;-1.3,-1.3 -1.3,-2.9~1.25 1.3,-2.9~1.25 1.3,-1.3", MarkPlace.Below),
        "iota-below" => ("0;0,-1.4 0,-2.8", MarkPlace.Under),
        "inverted-breve" => ("0;-1.3,0 -1.3,1.6~1.25 1.3,1.6~1.25 1.3,0", MarkPlace.Above),
        "psili" => ("0;0.4,1.7 0.4,0.9~0.4 -0.3,0", MarkPlace.Above),
        "dasia" => ("0;-0.4,1.7 -0.4,0.9~0.4 0.3,0", MarkPlace.Above),
        "macron-below" => ("0;-1.4,-1.6 1.4,-1.6", MarkPlace.Below),
        "ogonek" => ("0;0.9,0 0,-2.3~0.8 1.5,-2.3", MarkPlace.Foot),
        "apostrophe" => ("0;1.5,0 1.1,-2", MarkPlace.RightTop),
        "horn" => ("0;0,-1 1.2,-0.6~0.5 1.2,0.8", MarkPlace.RightTop),
        "tonos-before" => ("0;-1.8,7 -1.1,9", MarkPlace.Before),
        _ => throw new ArgumentOutOfRangeException(nameof(mark), mark, "No mark has this name."),
    };

    private static string? NameOf(int codePoint) => codePoint switch
    {
        0x300 or 0x340 => "grave",
        0x301 or 0x341 => "acute",
        0x302 => "circumflex",
        0x303 or 0x342 => "tilde",
        0x304 or 0x305 => "macron",
        0x306 => "breve",
        0x307 => "dot",
        0x308 => "diaeresis",
        0x309 => "hook",
        0x30A => "ring",
        0x30B => "double-acute",
        0x30C => "caron",
        0x30F => "double-grave",
        0x311 => "inverted-breve",
        0x312 => "turned-comma",
        0x313 => "psili",
        0x314 => "dasia",
        0x31B => "horn",
        0x323 => "dot-below",
        0x324 => "diaeresis-below",
        0x325 => "ring-below",
        0x326 => "comma",
        0x327 => "cedilla",
        0x328 => "ogonek",
        0x32D => "circumflex-below",
        0x32E => "breve-below",
        0x330 => "tilde-below",
        0x345 => "iota-below",
        0x331 or 0x332 => "macron-below",
        _ => null,
    };

    private static Dictionary<int, (int Letter, string Mark)> ReadPairs()
    {
        Dictionary<int, (int Letter, string Mark)> pairs = [];
        foreach (string row in Rows.Split('\n', StringSplitOptions.TrimEntries))
        {
            string[] words = row.Split(' ');
            foreach (string pair in words[1..])
            {
                pairs.Add(pair[0], (pair[1], words[0]));
            }
        }

        return pairs;
    }

    private const string Rows =
        """
        same ΑA ΒB ΕE ΖZ ΗH ΙI ΚK ΜM ΝN ΟO ΡP ΤT ΥY ΧX οo νv АA ВB ЕE КK МM НH ОO РP СC ТT ХX ІI ЈJ ЅS аa еe оo рp сc уy хx іi јj ѕs ГΓ ПΠ ФΦ З3 кκ фφ ĸκ ĐÐ ϑθ ϕφ ϵε ··
        grave ÀA ÈE ÌI ÒO ÙU àa èe ìı òo ùu ǸN ǹn ẀW ẁw ỲY ỳy ЀE ѐe ЍИ ѝи ẦÂ ầâ ẰĂ ằă ỀÊ ềê ỒÔ ồô ỜƠ ờơ ỪƯ ừư
        acute ÁA ÉE ÍI ÓO ÚU ÝY áa ée íı óo úu ýy ĆC ćc ŃN ńn ŚS śs ŹZ źz ĹL ĺl ŔR ŕr ǴG ǵg ẂW ẃw ǼÆ ǽæ ǾØ ǿø άα έε ήη ίι όo ύυ ώω ΐϊ ΰϋ ЃΓ ѓг ЌK ќκ ẤÂ ấâ ẮĂ ắă ẾÊ ếê ỐÔ ốô ỚƠ ớơ ỨƯ ứư
        circumflex ÂA ÊE ÎI ÔO ÛU âa êe îı ôo ûu ĈC ĉc ĜG ĝg ĤH ĥh ĴJ ĵȷ ŜS ŝs ŴW ŵw ŶY ŷy ẬẠ ậạ ỆẸ ệẹ ỘỌ ộọ
        caron ŠS ŽZ ČC ŘR ĚE šs žz čc řr ěe ĎD ŇN ňn ŤT ǍA ǎa ǏI ǐı ǑO ǒo ǓU ǔu ǦG ǧg
        apostrophe ďd ľl ĽL ťt
        tilde ÃA ÑN ÕO ãa ñn õo ĨI ĩı ŨU ũu ẼE ẽe ỸY ỹy ẪÂ ẫâ ẴĂ ẵă ỄÊ ễê ỖÔ ỗô ỠƠ ỡơ ỮƯ ữư
        diaeresis ÄA ËE ÏI ÖO ÜU ŸY äa ëe ïı öo üu ÿy ẄW ẅw ΪI ΫY ϊι ϋυ ЁE ёe ЇI їı
        ring ÅA åa ŮU ůu
        macron ĀA āa ĒE ēe ĪI īı ŌO ōo ŪU ūu ȲY ȳy
        breve ĂA ăa ĔE ĕe ĞG ğg ĬI ĭı ŎO ŏo ŬU ŭu ЙИ йи ЎУ ўy
        dot ĊC ċc ĖE ėe ĠG ġg İI ŻZ żz ḂB ḃb
        double-acute ŐO őo ŰU űu
        hook ẢA ảa ẺE ẻe ỈI ỉı ỎO ỏo ỦU ủu ỶY ỷy ẨÂ ẩâ ẲĂ ẳă ỂÊ ểê ỔÔ ổô ỞƠ ởơ ỬƯ ửư
        turned-comma ģg
        cedilla ÇC çc ŞS şs
        comma ĢG ĶK ķk ĻL ļl ŅN ņn ŖR ŗr ŢT ţt ȘS șs ȚT țt
        ogonek ĄA ąa ĘE ęe ĮI įi ŲU ųu ǪO ǫo
        horn ƠO ơo ƯU ưu
        dot-below ẠA ạa ẸE ẹe ỊI ịi ỌO ọo ỤU ụu ỴY ỵy ẶĂ ặă ỢƠ ợơ ỰƯ ựư
        tonos-before ΆA ΈE ΉH ΊI ΌO ΎY ΏΩ
        macron ǕÜ ǖü ǞÄ ǟä ǢÆ ǣæ ǬǪ ǭǫ ȪÖ ȫö ȬÕ ȭõ ȰȮ ȱȯ ӢИ ӣи ӮУ ӯу ḠG ḡg ḸḶ ḹḷ ṜṚ ṝṛ ᾱα ᾹΑ ῑι ῙΙ ῡυ ῩΥ ǠȦ ǡȧ
        acute ǗÜ ǘü ǺÅ ǻå ḈÇ ḉç ḖĒ ḗē ḮÏ ḯï ḰK ḱk ḾM ḿm ṌÕ ṍõ ṒŌ ṓō ṔP ṕp ṸŨ ṹũ ἄἀ ἅἁ ἌἈ ἍἉ ἔἐ ἕἑ ἜἘ ἝἙ ἤἠ ἥἡ ἬἨ ἭἩ ἴἰ ἵἱ ἼἸ ἽἹ ὄὀ ὅὁ ὌὈ ὍὉ ὔὐ ὕὑ ὝὙ ὤὠ ὥὡ ὬὨ ὭὩ
        caron ǙÜ ǚü ǨK ǩk ǰȷ ȞH ȟh
        grave ǛÜ ǜü ḔĒ ḕē ṐŌ ṑō ἂἀ ἃἁ ἊἈ ἋἉ ἒἐ ἓἑ ἚἘ ἛἙ ἢἠ ἣἡ ἪἨ ἫἩ ἲἰ ἳἱ ἺἸ ἻἹ ὂὀ ὃὁ ὊὈ ὋὉ ὒὐ ὓὑ ὛὙ ὢὠ ὣὡ ὪὨ ὫὩ ὰα ὲε ὴη ὶι ὸο ὺυ ὼω ᾺΑ ῈΕ ῊΗ ῒϊ ῚΙ ῢϋ ῪΥ ῭¨ ῸΟ ῺΩ
        double-grave ȀA ȁa ȄE ȅe ȈI ȉı ȌO ȍo ȐR ȑr ȔU ȕu
        inverted-breve ȂA ȃa ȆE ȇe ȊI ȋı ȎO ȏo ȒR ȓr ȖU ȗu
        dot ȦA ȧa ȮO ȯo ḊD ḋd ḞF ḟf ḢH ḣh ṀM ṁm ṄN ṅn ṖP ṗp ṘR ṙr ṠS ṡs ṤŚ ṥś ṦŠ ṧš ṨṢ ṩṣ ṪT ṫt ẆW ẇw ẊX ẋx ẎY ẏy ẛſ
        cedilla ȨE ȩe ḐD ḑd ḨH ḩh
        breve ӁЖ ӂж ӐА ӑа ӖЕ ӗе ḜȨ ḝȩ ᾰα ᾸΑ ῐι ῘΙ ῠυ ῨΥ
        diaeresis ӒА ӓа ӜЖ ӝж ӞЗ ӟз ӤИ ӥи ӦО ӧо ӬЭ ӭэ ӰУ ӱу ӴЧ ӵч ӸЫ ӹы ḦH ḧh ṎÕ ṏõ ṺŪ ṻū ẌX ẍx ẗt
        double-acute ӲУ ӳу
        ring-below ḀA ḁa
        dot-below ḄB ḅb ḌD ḍd ḤH ḥh ḲK ḳk ḶL ḷl ṂM ṃm ṆN ṇn ṚR ṛr ṢS ṣs ṬT ṭt ṾV ṿv ẈW ẉw ẒZ ẓz
        macron-below ḆB ḇb ḎD ḏd ḴK ḵk ḺL ḻl ṈN ṉn ṞR ṟr ṮT ṯt ẔZ ẕz ẖh
        circumflex-below ḒD ḓd ḘE ḙe ḼL ḽl ṊN ṋn ṰT ṱt ṶU ṷu
        tilde-below ḚE ḛe ḬI ḭi ṴU ṵu
        breve-below ḪH ḫh
        diaeresis-below ṲU ṳu
        tilde ṼV ṽv ἆἀ ἇἁ ἎἈ ἏἉ ἦἠ ἧἡ ἮἨ ἯἩ ἶἰ ἷἱ ἾἸ ἿἹ ὖὐ ὗὑ ὟὙ ὦὠ ὧὡ ὮὨ ὯὩ ᾶα ῁¨ ῆη ῖι ῗϊ ῦυ ῧϋ ῶω
        circumflex ẐZ ẑz
        ring ẘw ẙy
        psili ἀα ἈΑ ἐε ἘΕ ἠη ἨΗ ἰι ἸΙ ὀο ὈΟ ὐυ ὠω ὨΩ ῤρ
        dasia ἁα ἉΑ ἑε ἙΕ ἡη ἩΗ ἱι ἹΙ ὁο ὉΟ ὑυ ὙΥ ὡω ὩΩ ῥρ ῬΡ
        same άά έέ ήή ίί όό ύύ ώώ ΆΆ ιι ΈΈ ΉΉ ΐΐ ΊΊ ΰΰ ΎΎ `` ΌΌ ΏΏ ´´
        iota-below ᾀἀ ᾁἁ ᾂἂ ᾃἃ ᾄἄ ᾅἅ ᾆἆ ᾇἇ ᾈἈ ᾉἉ ᾊἊ ᾋἋ ᾌἌ ᾍἍ ᾎἎ ᾏἏ ᾐἠ ᾑἡ ᾒἢ ᾓἣ ᾔἤ ᾕἥ ᾖἦ ᾗἧ ᾘἨ ᾙἩ ᾚἪ ᾛἫ ᾜἬ ᾝἭ ᾞἮ ᾟἯ ᾠὠ ᾡὡ ᾢὢ ᾣὣ ᾤὤ ᾥὥ ᾦὦ ᾧὧ ᾨὨ ᾩὩ ᾪὪ ᾫὫ ᾬὬ ᾭὭ ᾮὮ ᾯὯ ᾲὰ ᾳα ᾴά ᾷᾶ ᾼΑ ῂὴ ῃη ῄή ῇῆ ῌΗ ῲὼ ῳω ῴώ ῷῶ ῼΩ
        """;
}
