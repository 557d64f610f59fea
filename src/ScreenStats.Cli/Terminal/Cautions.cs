namespace ScreenStats.Cli.Terminal;

/// <summary>The cautions that stand under every result.</summary>
internal static class Cautions
{
    public const string Screening =
        "Screening is not diagnosis: a positive or inconclusive screen needs a confirmatory test, and a negative one does not rule\n"
        + "out infection. Isolation, notification and records follow local public-health and occupational-health rules and the\n"
        + "judgement of licensed practitioners.";
}
