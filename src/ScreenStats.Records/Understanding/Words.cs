using System.Collections.Immutable;
using ScreenStats.Counting.Ledger;

namespace ScreenStats.Records.Understanding;

/// <summary>
/// The words that columns of choices are read by: canonical word and its common synonyms,
/// for results and yes or no also in German, French and Spanish. The program file's
/// own words go first; case, accents, spaces and punctuation make no difference.
/// </summary>
internal sealed class Words
{
    /// <summary>Code of a blank: not recorded.</summary>
    public const int Blank = -1;

    /// <summary>Code of a word that nobody knows.</summary>
    public const int Unknown = -2;

    public static readonly Words Outcome = new("negative", "positive", "inconclusive", "invalid")
    {
        Synonyms =
        {
            ["negative"] = "neg n - undetected nonreactive negativ negatif negativo negativa nichtnachgewiesen nichtnachweisbar",
            ["positive"] = "pos p + detected reactive positiv positif positivo positiva nachgewiesen nachweisbar reaktiv reactif reactivo reactiva detecte detectee detectado detectada",
            ["inconclusive"] = "indeterminate equivocal borderline unklar grenzwertig uneindeutig fraglich zweifelhaft unbestimmt douteux douteuse indetermine indeterminee equivoque indeterminado indeterminada dudoso dudosa inc inconcl indet",
            ["invalid"] = "void failed fail error inv ungultig ungueltig invalide invalido invalida fehlgeschlagen fehler echec nulo nula",
        },
        Phrases =
        {
            ["negative"] = ["negative result", "not detected", "non reactive", "kein nachweis", "nicht reaktiv", "non détecté", "non détectée", "non réactif", "non réactive", "no detectado", "no detectada", "no reactivo", "no reactiva"],
            ["positive"] = ["positive result", "presumptive positive"],
            ["inconclusive"] = ["no control line", "nicht eindeutig", "nicht schlüssig", "non concluant", "non concluante", "no concluyente", "keine kontrolllinie"],
            ["invalid"] = ["invalid result", "test failed", "no lines", "nicht auswertbar", "ininterprétable", "non interprétable", "no interpretable", "non valide", "non valable", "no válido", "no válida", "no valorable"],
        },
    };

    public static readonly Words Confirmation = new("negative", "positive", "indeterminate", "rejected")
    {
        Synonyms =
        {
            ["negative"] = "neg n - undetected nonreactive negativ negatif negativo negativa nichtnachgewiesen nichtnachweisbar",
            ["positive"] = "pos p + detected reactive positiv positif positivo positiva nachgewiesen nachweisbar reaktiv reactif reactivo reactiva detecte detectee detectado detectada",
            ["indeterminate"] = "inconclusive equivocal invalid borderline unresolved unklar grenzwertig uneindeutig fraglich zweifelhaft unbestimmt douteux douteuse indetermine indeterminee equivoque indeterminado indeterminada dudoso dudosa inc inconcl indet inv ungultig ungueltig invalide invalido invalida",
            ["rejected"] = "unfit unsatisfactory insufficient cancelled canceled qns unsuitable leaked rej abgelehnt zuruckgewiesen zurueckgewiesen unbrauchbar rejete rejetee refuse rechazado rechazada",
        },
        Phrases =
        {
            ["negative"] = ["not detected", "non reactive", "kein nachweis", "nicht reaktiv", "non détecté", "non détectée", "non réactif", "non réactive", "no detectado", "no detectada", "no reactivo", "no reactiva"],
            ["positive"] = [],
            ["indeterminate"] = ["presumptive", "no conclusion", "nicht eindeutig", "nicht schlüssig", "non concluant", "non concluante", "no concluyente", "non valide", "no válido", "no válida"],
            ["rejected"] = ["not tested", "specimen rejected", "quantity not sufficient", "insufficient sample", "nicht auswertbar", "nicht verwertbar", "ininterprétable", "non interprétable", "no interpretable", "non conforme", "prélèvement insuffisant", "échantillon insuffisant", "muestra insuficiente", "material insuficiente", "no procesado", "no procesada"],
        },
    };

    public static readonly Words YesNo = new("no", "yes")
    {
        Synonyms =
        {
            ["no"] = "n false f 0 absent none nein non falsch faux falso",
            ["yes"] = "y true t 1 present visible seen x ja oui si wahr vrai verdadero sichtbar",
        },
        Phrases = { ["no"] = ["not visible", "not seen", "not present", "nicht sichtbar"], ["yes"] = [] },
    };

    /// <summary>Control-swab marks; the third word is the mark of an ordinary run.</summary>
    public static readonly Words Control = new("negative", "positive", "no")
    {
        Synonyms =
        {
            ["negative"] = "neg nc -",
            ["positive"] = "pos pc +",
            ["no"] = "none false 0 sample patient person screen",
        },
        Phrases = { ["negative"] = ["negative control"], ["positive"] = ["positive control"], ["no"] = ["not a control"] },
    };

    public static readonly Words Specimen = new("nasal", "nasopharyngeal", "throat", "saliva", "other")
    {
        Synonyms =
        {
            ["nasal"] = "nose nares anterior midturbinate nostril nase nasenabstrich nez nasale nariz",
            ["nasopharyngeal"] = "np nps nasopharynx nasenrachen nasopharynge nasofaringeo",
            ["throat"] = "oropharyngeal op pharyngeal oropharynx rachen rachenabstrich gorge garganta",
            ["saliva"] = "spit oralfluid speichel salive",
            ["other"] = "mixed combined",
        },
        Phrases =
        {
            ["nasal"] = ["nasal swab", "anterior nasal", "anterior nares", "anterior nasal swab", "mid turbinate", "nose swab"],
            ["nasopharyngeal"] = ["nasopharyngeal swab", "np swab"],
            ["throat"] = ["throat swab", "oropharyngeal swab"],
            ["saliva"] = ["oral fluid"],
            ["other"] = [],
        },
    };

    public static readonly Words Collection = new("supervised", "self")
    {
        Synonyms =
        {
            ["supervised"] = "observed staff assisted professional nurse yes watched beaufsichtigt supervise supervisado",
            ["self"] = "unsupervised unobserved home selfcollected selfswab no eigenstandig unbeaufsichtigt autoprelevement",
        },
        Phrases =
        {
            ["supervised"] = ["collected by staff", "staff collected", "supervised self collection", "health care worker"],
            ["self"] = ["self collected", "self collection", "self swab", "at home"],
        },
    };

    public static readonly Words Reason = new("follow-up", "audit", "other")
    {
        Synonyms =
        {
            ["follow-up"] = "followup confirmatory confirmation reflex confirm nachtestung bestatigung bestatigungstest confirmacion suivi seguimiento",
            ["audit"] = "verification quality sample random stichprobe zufallsstichprobe",
            ["other"] = "symptoms symptomatic contact travel diagnostic symptome symptomes sintomas kontakt contacto",
        },
        Phrases =
        {
            ["follow-up"] = ["follow up of screen", "positive screen", "confirmatory test"],
            ["audit"] = ["audit sample", "random sample", "quality audit", "negative audit", "échantillon aléatoire", "contrôle aléatoire", "muestra aleatoria"],
            ["other"] = ["contact tracing"],
        },
    };

    private static readonly ImmutableArray<string> Blanks = ["na", "null", "unknown", "notrecorded", "notknown", "nodata", "missing", "unbekannt", "keineangabe", "inconnu", "nonrenseigne", "desconocido", "sindatos"];

    private readonly string[] canonical;

    private Words(params string[] canonical) => this.canonical = canonical;

    private Dictionary<string, string> Synonyms { get; } = [];

    private Dictionary<string, string[]> Phrases { get; } = [];

    /// <summary>The canonical words; the code of a word is its position.</summary>
    public IReadOnlyList<string> Canonical => canonical;

    /// <summary>The tables by which the columns of an export are read.</summary>
    public static IReadOnlyList<Words> Of(ExportKind export) => export switch
    {
        ExportKind.Screening => [Outcome, YesNo, Specimen, Collection, Control],
        ExportKind.Confirmatory => [Confirmation, Reason],
        ExportKind.Controls => [Outcome, Control, YesNo],
        _ => [],
    };

    /// <summary>True for a word that has a meaning here, be it that nothing is recorded.</summary>
    public bool Knows(string word) => Known(TextFold.Fold(word)) != Unknown;

    /// <summary>Every word that is known, with its code.</summary>
    public IEnumerable<(string Word, int Code)> All => canonical.SelectMany((word, code) =>
        Synonyms[word].Split(' ').Concat(Phrases[word]).Append(word).Select(known => (known, code)));

    /// <summary>A function from a word to its code, with the program file's own words first.</summary>
    public Func<string, int> Reader(IEnumerable<KeyValuePair<string, string>> own)
    {
        var table = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var (word, meaning) in own)
        {
            // One table serves every column of an export: a meaning of another column is no concern of this one.
            var code = Known(TextFold.Fold(meaning));
            if (code != Unknown) table.TryAdd(TextFold.Fold(word), code);
        }

        return text =>
        {
            var folded = TextFold.Fold(text);
            return table.TryGetValue(folded, out var code) ? code : Known(folded);
        };
    }

    private int Known(string folded)
    {
        if (folded.Length == 0) return Blank;
        for (var code = 0; code < canonical.Length; code++)
        {
            var word = canonical[code];
            if (TextFold.Fold(word) == folded || Synonyms[word].Split(' ').Contains(folded)) return code;
            if (Phrases[word].Any(phrase => TextFold.Fold(phrase) == folded)) return code;
        }

        return Blanks.Contains(folded) ? Blank : Unknown;
    }
}
