using System.Collections.Frozen;
using System.Text;

namespace WheelDraft.Engineering;

/// <summary>Letters of Latin, Greek and Cyrillic in the letters a to z, for file names; what has no row stays as it is.</summary>
/// <remarks>All from memory. Latin: the letter without its mark, and ICAO Doc 9303-3 section 6 where that gives two (ä ae, ö oe, ü ue, å aa, ø oe, ß ss,
/// þ th). Greek: ELOT 743 (ISO 843 type 2), the pairs αυ ευ ηυ as av ev iv or af ef if before a voiceless letter, ου ou, γγ ng, γξ nx, γχ nch, μπ b at a word's
/// beginning; a Greek letter that stands without another is a sign and goes by its name (α alpha). Cyrillic: ISO 9 in letters without marks, as GOST 7.79-2000
/// system B has it, with c for every ц, kh for х, and the hard and soft signs left out.</remarks>
internal static class Transliteration
{
    private static readonly Lazy<FrozenDictionary<char, string>> Plain = new(() => Rows(LatinRows + CyrillicRows));
    private static readonly Lazy<FrozenDictionary<char, string>> Greek = new(() => Rows(GreekRows));
    private static readonly Lazy<FrozenDictionary<char, string>> GreekNames = new(() => Rows(GreekNameRows));

    /// <summary>A name in small letters, written in a to z as far as it can be.</summary>
    public static string Of(string small)
    {
        ArgumentNullException.ThrowIfNull(small);
        if (small.All(char.IsAscii))
        {
            return small;
        }

        StringBuilder written = new();
        for (int i = 0; i < small.Length;)
        {
            i += IsGreek(small[i]) ? Word(small, i, written) : One(small, i, written);
        }

        return written.ToString();
    }

    /// <summary>One letter with the marks that stand after it; how many characters they are.</summary>
    private static int One(string small, int at, StringBuilder written)
    {
        int marks = 1;
        while (at + marks < small.Length && IsMark(small[at + marks]))
        {
            marks++;
        }

        const char diaeresis = '\u0308';
        bool twoDots = marks > 1 && small[at + 1] == diaeresis && small[at] is 'a' or 'o' or 'u';
        _ = twoDots ? written.Append(small[at]).Append('e')
            : Plain.Value.TryGetValue(small[at], out string? letters) ? written.Append(letters)
            : IsMark(small[at]) ? written : written.Append(small[at]);
        return marks;
    }

    /// <summary>A run of Greek letters; how many characters it is.</summary>
    private static int Word(string small, int from, StringBuilder written)
    {
        int to = from;
        StringBuilder run = new();
        for (; to < small.Length && (IsGreek(small[to]) || IsMark(small[to])); to++)
        {
            if (!IsMark(small[to]))
            {
                run.Append(small[to]);
            }
        }

        string word = run.ToString();
        if (word.Length == 1)
        {
            written.Append(GreekNames.Value.GetValueOrDefault(Bare(word[0]), ""));
            return to - from;
        }

        for (int i = 0; i < word.Length;)
        {
            string? pair = i + 1 < word.Length ? Pair(word, i) : null;
            written.Append(pair ?? Greek.Value.GetValueOrDefault(word[i], ""));
            i += pair is null ? 1 : 2;
        }

        return to - from;
    }

    private static string? Pair(string word, int at) => (Bare(word[at]), word[at + 1]) switch
    {
        ('ο', 'υ' or 'ύ') => "ou",
        ('α', 'υ' or 'ύ') => "a" + Upsilon(word, at + 2),
        ('ε', 'υ' or 'ύ') => "e" + Upsilon(word, at + 2),
        ('η', 'υ' or 'ύ') => "i" + Upsilon(word, at + 2),
        ('γ', 'γ') => "ng",
        ('γ', 'ξ') => "nx",
        ('γ', 'χ') => "nch",
        ('μ', 'π') when at == 0 => "b",
        _ => null,
    };

    // Voiced before vowels and voiced consonants, voiceless before the others and at the end.
    private static string Upsilon(string word, int next) => next >= word.Length || "θκξπσςτφχψ".Contains(word[next], StringComparison.Ordinal) ? "f" : "v";

    private static char Bare(char letter) => letter switch
    {
        'ά' => 'α',
        'έ' => 'ε',
        'ή' => 'η',
        'ί' or 'ϊ' or 'ΐ' => 'ι',
        'ό' => 'ο',
        'ύ' or 'ϋ' or 'ΰ' => 'υ',
        'ώ' => 'ω',
        'ς' => 'σ',
        'µ' => 'μ',
        'ϑ' => 'θ',
        'ϕ' => 'φ',
        'ϵ' => 'ε',
        _ => letter,
    };

    private static bool IsGreek(char c) => Greek.Value.ContainsKey(c);

    private static bool IsMark(char c) => c is >= '\u0300' and <= '\u036F';

    private static FrozenDictionary<char, string> Rows(string rows)
    {
        Dictionary<char, string> letters = [];
        foreach (string row in rows.Split((char[])['\n', ' '], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            string[] sides = row.Split('=');
            foreach (char c in sides[0])
            {
                letters.Add(c, sides.Length > 1 ? sides[1] : "");
            }
        }

        return letters.ToFrozenDictionary();
    }

    private const string LatinRows =
        """
        àáâãāăąǎạảấầẩẫậắằẳẵặª=a äæǽ=ae å=aa ḃ=b çćĉċč=c ďđð=d èéêëēĕėęěẹẻẽếềểễệ=e ƒ=f ĝğġģǧ=g ĥħ=h ìíîïĩīĭįıİǐịỉ=i ĳ=ij ĵ=j ķĸ=k ĺļľŀł=l ñńņňŉŋ=n
        òóôõōŏőǒọỏốồổỗộơớờởỡợº=o öøœǿ=oe ŕŗř=r śŝşšșſ=s ß=ss ţťŧț=t þ=th ùúûũūŭůűųǔụủưứừửữự=u ü=ue ŵẁẃẅ=w ýÿŷỳỵỷỹ=y źżž=z ¹=1 ²=2 ³=3 ﬁ=fi ﬂ=fl

        """;

    private const string CyrillicRows =
        """
        а=a б=b в=v гґ=g д=d еэ=e ё=yo ж=zh з=z и=i й=j к=k л=l м=m н=n о=o п=p р=r с=s т=t у=u ф=f х=kh ц=c ч=ch ш=sh щ=shh ъь=
        ы=y ю=yu я=ya і=i ї=yi є=ye ў=u ђ=dj ј=j љ=lj њ=nj ћ=c џ=dz ѓ=g ќ=k ѕ=z ѐ=e ѝ=i
        """;

    private const string GreekRows =
        """
        αά=a β=v γ=g δ=d εέϵ=e ζ=z ηή=i θϑ=th ιίϊΐ=i κ=k λ=l μµ=m ν=n ξ=x οό=o π=p ρ=r σς=s τ=t υύϋΰ=y φϕ=f χ=ch ψ=ps ωώ=o
        """;

    private const string GreekNameRows =
        """
        α=alpha β=beta γ=gamma δ=delta ε=epsilon ζ=zeta η=eta θ=theta ι=iota κ=kappa λ=lambda μ=mu ν=nu ξ=xi ο=omicron π=pi ρ=rho σ=sigma τ=tau
        υ=upsilon φ=phi χ=chi ψ=psi ω=omega
        """;
}
