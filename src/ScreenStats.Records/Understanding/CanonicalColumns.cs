using ScreenStats.Counting.Ledger;

namespace ScreenStats.Records.Understanding;

/// <summary>The columns of each export by their canonical names, and the headings by which they are recognised.</summary>
internal static class CanonicalColumns
{
    public const string Person = "person";
    public const string Site = "site";
    public const string CollectedAt = "collected_at";
    public const string Result = "result";
    public const string ControlLine = "control_line";
    public const string TestLine = "test_line";
    public const string Lot = "lot";
    public const string Kit = "kit";
    public const string LotExpiry = "lot_expiry";
    public const string ReadAt = "read_at";
    public const string Operator = "operator";
    public const string Specimen = "specimen";
    public const string Collection = "collection";
    public const string Symptomatic = "symptomatic";
    public const string Exposed = "exposed";
    public const string Outbreak = "outbreak";
    public const string Control = "control";
    public const string ScreenId = "screen_id";
    public const string ReportedAt = "reported_at";
    public const string Method = "method";
    public const string Reason = "reason";
    public const string SamplingStratum = "sampling_stratum";
    public const string RunAt = "run_at";
    public const string Week = "week";
    public const string Date = "date";
    public const string Eligible = "eligible";
    public const string Region = "region";

    private static readonly string[] PersonHeadings =
        ["employee", "employee id", "employee key", "employee pseudonym", "person id", "person key", "person pseudonym", "pseudonym",
         "badge", "badge id", "badge number", "subject", "subject id", "participant", "participant id", "worker", "worker id",
         "staff id", "staff member", "personnel number", "individual", "individual id", "patient id", "patient",
         "mitarbeiter", "mitarbeiternummer", "mitarbeiter nr", "personalnummer", "personal nr", "ausweis nr", "ausweisnummer", "probanden nr",
         "personen id", "personenschlüssel", "mitarbeiterschlüssel", "teilnehmer", "salarié", "code salarié", "code employé", "employé", "matricule", "no de badge", "n de badge", "numéro de badge", "nº de badge", "número de empleado", "nº de empleado", "pseudonyme", "empleado", "trabajador", "seudónimo", "participante"];

    private static readonly string[] SiteHeadings =
        ["location", "facility", "workplace", "work site", "site id", "site name", "site code", "plant", "office", "campus",
         "screening site", "test site", "testing site", "depot",
         "standort", "werk", "betrieb", "betriebsstätte", "teststelle", "werksstandort", "usine", "site de travail", "site de dépistage", "lieu", "établissement", "centro", "sede", "planta", "fábrica", "centro de trabajo", "lugar"];

    private static readonly string[] CollectedHeadings =
        ["collected", "collection time", "collection date", "collected on", "collection date time", "date collected", "time collected",
         "test date", "test time", "tested at", "tested on", "date of test", "screened at", "screened on", "screening date",
         "screening time", "sample date", "sample time", "sampled at", "specimen date", "specimen collected", "collection datetime",
         "date", "datetime", "timestamp",
         "entnahme", "entnahmezeit", "entnahmezeitpunkt", "entnahmedatum", "abnahme", "abnahmedatum", "testdatum", "testzeitpunkt", "testdatum uhrzeit", "testdatum und uhrzeit", "datum uhrzeit", "datum und uhrzeit", "entnahmedatum uhrzeit", "probenahme", "datum", "prélèvement", "date de prélèvement", "date et heure du prélèvement", "date et heure de prélèvement", "date heure du prélèvement", "date et heure du test", "date et heure", "date du prélèvement", "date du test", "fecha", "fecha de toma", "fecha de la toma", "fecha y hora de la toma", "fecha y hora", "fecha de prueba", "fecha de la prueba"];

    private static readonly string[] ResultHeadings =
        ["outcome", "test result", "screen result", "screening result", "result text", "antigen result", "rapid test result", "reading",
         "interpretation",
         "ergebnis", "testergebnis", "schnelltestergebnis", "résultat", "résultat du test", "resultado", "resultado de la prueba"];

    private static readonly string[] LotHeadings =
        ["lot number", "lot no", "lot id", "lot code", "batch", "batch number", "batch no", "batch id", "batch code", "kit lot", "test lot",
         "charge", "chargennummer", "chargen nr", "chargen nummer", "los nr", "losnummer", "numéro de lot", "no de lot", "n de lot", "nº de lot", "nº de lote", "n de lote", "lote", "número de lote"];

    private static readonly string[] OperatorHeadings =
        ["operator id", "operator pseudonym", "tester", "tester id", "reader", "reader id", "read by", "performed by", "administered by",
         "tested by", "technician", "technician id", "collector", "collected by id",
         "durchgeführt von", "abgelesen von", "bediener", "opérateur", "réalisé par", "operador", "realizado por"];

    private static readonly string[] ControlLineHeadings = ["c line", "control line seen", "control line visible", "line c", "control band"];

    private static readonly string[] TestLineHeadings = ["t line", "test line seen", "test line visible", "line t", "test band"];

    private static readonly string[] KitHeadings = ["kit id", "kit number", "kit no", "box", "box id", "box number", "kit serial"];

    private static readonly string[] ControlHeadings =
        ["control swab", "control type", "control run", "quality control", "qc", "qc type", "expected", "expected result", "control sample"];

    public static IReadOnlyList<CanonicalColumn> Of(ExportKind export) => export switch
    {
        ExportKind.Screening => Screening,
        ExportKind.Confirmatory => Confirmatory,
        ExportKind.Controls => Controls,
        ExportKind.Headcount => Headcount,
        _ => Sites,
    };

    private static readonly CanonicalColumn[] Screening =
    [
        new(Person, true, PersonHeadings),
        new(Site, true, SiteHeadings),
        new(CollectedAt, true, CollectedHeadings),
        new(Result, true, ResultHeadings),
        new(ControlLine, false, ControlLineHeadings),
        new(TestLine, false, TestLineHeadings),
        new(Lot, false, LotHeadings),
        new(Kit, false, KitHeadings),
        new(LotExpiry, false, ["expiry", "expiry date", "expires", "expires on", "expiration", "expiration date", "lot expiration",
            "lot expiry date", "lot expiration date", "use by", "exp date",
            "verfallsdatum", "verfalldatum", "verfall", "haltbar bis", "verwendbar bis", "date de péremption", "péremption", "date d'expiration", "fecha de caducidad", "caducidad"]),
        new(ReadAt, false, ["read", "read time", "reading time", "time read", "result time", "result read at", "read on", "interpreted at",
            "ablesezeit", "ablesezeitpunkt", "abgelesen", "abgelesen um", "heure de lecture", "date de lecture", "date et heure de lecture", "hora de lectura"]),
        new(Operator, false, OperatorHeadings),
        new(Specimen, false, ["specimen type", "sample type", "specimen source", "swab", "swab type", "swab site", "matrix", "probenart", "probenmaterial", "abstrichart", "type de prélèvement", "tipo de muestra"]),
        new(Collection, false, ["collection method", "collection mode", "collected by", "supervision", "supervised", "sampling method"]),
        new(Symptomatic, false, ["symptoms", "has symptoms", "symptom", "with symptoms", "symptomatic at test", "symptome", "symptomatisch", "beschwerden", "symptômes", "síntomas"]),
        new(Exposed, false, ["exposure", "contact", "close contact", "contact of case", "known exposure", "known contact"]),
        new(Outbreak, false, ["outbreak run", "outbreak test", "outbreak testing", "outbreak driven", "outbreak response", "because of an outbreak", "part of an outbreak",
            "ausbruch", "ausbruchstest", "ausbruchstestung", "wegen ausbruch", "foyer", "test de foyer", "dépistage de foyer", "brote", "por brote", "prueba por brote"]),
        new(Control, false, ControlHeadings),
        new(ScreenId, false, ["screening id", "test id", "run id", "record id", "result id", "screen number", "test number", "accession",
            "accession number"]),
    ];

    private static readonly CanonicalColumn[] Confirmatory =
    [
        new(Person, true, PersonHeadings),
        new(CollectedAt, true, CollectedHeadings),
        new(Result, true, ["outcome", "test result", "result text", "laboratory result", "lab result", "pcr result", "confirmatory result",
            "confirmation result", "interpretation", "ergebnis", "befund", "pcr ergebnis", "laborergebnis", "résultat", "résultat pcr", "resultado", "resultado pcr"]),
        new(ReportedAt, false, ["reported", "report time", "report date", "reported on", "date reported", "resulted at", "result date",
            "result time", "resulted", "released at", "authorised at", "verified at",
            "befunddatum", "befundzeit", "ergebnisdatum", "date du résultat", "date de rendu", "fecha de resultado", "fecha del resultado"]),
        new(Method, false, ["test method", "assay", "test type", "technique", "laboratory method", "methode", "verfahren", "méthode", "método"]),
        new(Reason, false, ["reason for test", "test reason", "purpose", "indication", "anlass", "testanlass", "grund", "motif", "motif du test", "motivo", "motivo de la prueba"]),
        new(SamplingStratum, false, ["stratum", "audit stratum", "sampling group"]),
    ];

    private static readonly CanonicalColumn[] Controls =
    [
        new(Site, true, SiteHeadings),
        new(RunAt, true, ["run on", "run date", "run time", "tested at", "test date", "date", "timestamp", "datetime", "collected at", "performed at"]),
        new(Control, true, ControlHeadings),
        new(Result, true, ["outcome", "observed", "observed result", "test result", "reading", "interpretation"]),
        new(ControlLine, false, ControlLineHeadings),
        new(TestLine, false, TestLineHeadings),
        new(Lot, false, LotHeadings),
        new(Kit, false, KitHeadings),
        new(Operator, false, OperatorHeadings),
    ];

    private static readonly CanonicalColumn[] Headcount =
    [
        new(Site, true, SiteHeadings),
        new(Week, false, ["iso week", "calendar week", "week of year", "kalenderwoche", "kw", "woche", "semaine", "semaine iso", "semana"]),
        new(Date, false, ["day", "week start", "week starting", "week beginning", "monday"]),
        new(Eligible, true, ["eligible people", "eligible persons", "headcount", "head count", "people", "staff", "employees", "on site",
            "number eligible", "workforce", "belegschaft", "beschäftigte", "anzahl beschäftigte", "mitarbeiterzahl", "anzahl mitarbeiter", "effectif", "effectifs",
            "nombre de salariés", "plantilla", "número de empleados"]),
    ];

    private static readonly CanonicalColumn[] Sites =
    [
        new(Site, true, SiteHeadings),
        new(Region, false, ["area", "district", "region name", "county", "state", "province", "territory", "division", "bundesland", "gebiet", "bezirk", "kreis",
            "région", "département", "secteur", "región", "provincia", "zona", "comunidad autónoma"]),
    ];
}
