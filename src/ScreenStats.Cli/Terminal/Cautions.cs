namespace ScreenStats.Cli.Terminal;

/// <summary>The cautions that stand under every result.</summary>
internal static class Cautions
{
    public const string Screening =
        "Screening is not diagnosis: a positive or inconclusive screen needs a confirmatory test, and a negative one does not rule\n"
        + "out infection. Isolation, notification and records follow local public-health and occupational-health rules and the\n"
        + "judgement of licensed practitioners.";

    public const string Alarms =
        "An alarm says that a lot, site or control needs looking into. It never says that a positive was false or that anybody may return\n"
        + "to work. What is said of operators is for training, not for discipline.";

    public const string Repeated =
        "This takes each result to err by itself. Misses repeat within a person, so repeating gains less. Antigen tests of infected people without\n"
        + "symptoms, 48 h apart from the first day: 54.6 % after two and 89.2 % after three if each missed by itself, 39.3 % and 56.4 % as seen (letter of\n"
        + "the US Food and Drug Administration, 1 November 2022; part of the gap is drop-out). False positives can repeat as well.";

    public const string Confirmed =
        "This takes the two tests to err independently of each other in people with and in people without the condition. Early or late in an\n"
        + "infection, or with one poor specimen, both miss together, and one cause can make both false positive.";

    public const string Cadence =
        "Every figure is taken as exact, each screen is taken to miss by itself, and\n"
        + "every infection to have the same windows. Misses repeat within a person and\n"
        + "people skip screens, so less is found than shown. False positives count all\n"
        + "person-time as uninfected. Infections averted are not in these figures.";

    public const string CadenceLimits =
        "Limits carry how well sensitivity, specificity and incidence are known, and\n"
        + "nothing else. Each screen is taken to miss by itself, and every infection to\n"
        + "have the same windows. Misses repeat within a person and people skip screens,\n"
        + "so less is found than shown. False positives count all person-time as\n"
        + "uninfected. Infections averted are not in these figures.";

    public const string CadenceCourse =
        "Limits, where there are any, carry how well sensitivity, specificity and\n"
        + "incidence are known; course, delays, misses, participation and spread are taken\n"
        + "as exact, and a choice needs more than one guess of them. A screen is independent\n"
        + "of when somebody was infected. False positives count all person-time as uninfected.";

    public const string Value =
        "Every price, and what an effect is worth, is the program file's; the verdict\n"
        + "holds at these, for that perspective, under its condition and the assumptions of\n"
        + "the question how often to screen. Law, duty of care and what those who are\n"
        + "screened want are not in the sum.";
}
