using System.Collections.Immutable;

namespace ScreenStats.Counting.Diagnostics;

/// <summary>The codes of the checks of conduct and sense: rows that are understood and counted, but hardly as they happened.</summary>
public static class ConductDiagnostics
{
    /// <summary>A time after the data's own date, or far after all others.</summary>
    public const string TimeInTheFuture = "time-in-the-future";

    /// <summary>A time before the program started, or far before all others.</summary>
    public const string TimeBeforeProgram = "time-before-program";

    /// <summary>A device read before its specimen was collected.</summary>
    public const string ReadBeforeCollected = "read-before-collected";

    /// <summary>A device read before its reading window.</summary>
    public const string ReadTooEarly = "read-too-early";

    /// <summary>A device read after its reading window.</summary>
    public const string ReadTooLate = "read-too-late";

    /// <summary>A lot that had expired.</summary>
    public const string ExpiredLot = "expired-lot";

    /// <summary>More runs from a kit than it holds.</summary>
    public const string BeyondKitContents = "beyond-kit-contents";

    /// <summary>One kit with two lots.</summary>
    public const string LotsMixedInKit = "lots-mixed-in-kit";

    /// <summary>One person at two sites on one day.</summary>
    public const string TwoSitesOnOneDay = "two-sites-on-one-day";

    /// <summary>Two results for one person within minutes.</summary>
    public const string ResultsWithinMinutes = "results-within-minutes";

    /// <summary>A run within the isolation after a confirmatory positive.</summary>
    public const string WithinIsolation = "within-isolation";

    /// <summary>Two rows of one person and time that differ in one column.</summary>
    public const string NearDuplicate = "near-duplicate";

    /// <summary>People of the confirmatory export who do not appear in the screening export.</summary>
    public const string PersonsNeverScreened = "persons-never-screened";

    /// <summary>Times of the two exports that fit each other only when shifted by whole hours.</summary>
    public const string ShiftedClock = "shifted-clock";

    /// <summary>Names of lots that differ in case, blanks, or O and 0 only.</summary>
    public const string LotSpelledTwice = "lot-spelled-twice";

    /// <summary>Names of sites that differ in case, blanks, or O and 0 only.</summary>
    public const string SiteSpelledTwice = "site-spelled-twice";

    /// <summary>A site without a negative run.</summary>
    public const string NoNegatives = "no-negatives";

    /// <summary>Times of a site that fall on one minute of the hour.</summary>
    public const string OneMinuteOfTheHour = "one-minute-of-the-hour";

    /// <summary>One of several operators is recorded for nearly every run of a site.</summary>
    public const string OneOperator = "one-operator";

    /// <summary>Every run of a site on one day has the same result, which is not negative.</summary>
    public const string OneResultForADay = "one-result-for-a-day";

    /// <summary>Runs due for follow-up before the first or after the last specimen that followed up a run of their site.</summary>
    public const string OutsideFollowUpCoverage = "outside-follow-up-coverage";

    /// <summary>Every code with its severity, meaning and advice.</summary>
    public static ImmutableArray<DiagnosticDescription> All { get; } =
    [
        new(TimeInTheFuture, Severity.Warning, "A specimen was collected, by its time, after the date up to which the data are complete (--as-of or dataAsOf), or long after all other rows; it is counted.",
            "Correct the year or the clock in the source, or state a later date."),
        new(TimeBeforeProgram, Severity.Warning, "A specimen was collected, by its time, before the program started (startsOn), or long before all other rows; it is counted.",
            "Correct the year or the clock in the source."),
        new(ReadBeforeCollected, Severity.Warning, "By their times the device was read before the specimen was collected; the run is counted.", "Check whether the two columns are swapped, and how times are entered."),
        new(ReadTooEarly, Severity.Warning, "The device was read earlier than its instructions for use allow, which can miss positives; the run is counted.", "Retrain those who read, and have times entered when they happen."),
        new(ReadTooLate, Severity.Warning, "The device was read later than its instructions for use allow, which can make false positives; the run is counted.", "Retrain those who read, and have times entered when they happen."),
        new(ExpiredLot, Severity.Warning, "The lot had expired on the day of the run; the run is counted.", "Take expired kits out of use; ask the manufacturer whether the lot's expiry was extended."),
        new(BeyondKitContents, Severity.Warning, "More runs are recorded for a kit than it holds.", "Check how kits are entered: a kit may have been changed without its number."),
        new(LotsMixedInKit, Severity.Warning, "One kit of a site is recorded with more than one lot, though a kit holds one.", "Check how kits and lots are entered, and whether boxes were refilled."),
        new(TwoSitesOnOneDay, Severity.Warning, "The same person was screened at two sites on one day.", "Check whether two people share a pseudonym, or a site is entered wrongly."),
        new(ResultsWithinMinutes, Severity.Warning, "One person has a second run sooner after the first than a device can be read, though the first was valid.", "Check whether runs are entered twice, or under the wrong person."),
        new(WithinIsolation, Severity.Warning, "A person was screened within the isolation after a confirmatory positive; the run is counted.", "Check whether the person was on site; local rules say what follows."),
        new(NearDuplicate, Severity.Warning, "Two rows of one person and one time differ in one column only; both are counted.", "Find out which of the two is right and remove the other."),
        new(PersonsNeverScreened, Severity.Warning, "People of the confirmatory export do not appear in the screening export, so their specimens follow up nothing.", "Check that both exports use the same pseudonyms and cover the same people and time."),
        new(ShiftedClock, Severity.Warning, "Specimens lie outside the time in which they could follow up a run, and would lie inside if all were shifted by the same whole number of hours. Nothing was shifted.",
            "Check the time zones of both exports; state timeZone in the program file, or export times with their offset."),
        new(LotSpelledTwice, Severity.Warning, "Names of lots differ only in case, blanks, or the letter O and the figure 0; they are counted as different lots.", "Spell each lot in one way in the source."),
        new(SiteSpelledTwice, Severity.Warning, "Names of sites differ only in case, blanks, or the letter O and the figure 0; they are counted as different sites.", "Spell each site in one way in the source."),
        new(NoNegatives, Severity.Warning, "A site has runs but no negative one, as when only positives were exported; its positivity means nothing.", "Export every run of the site."),
        new(OneMinuteOfTheHour, Severity.Note, "More than half of the times of a site fall on one minute of the hour, so times are not entered as they happen.", "Have times taken from the clock; delays and reading windows cannot be judged there."),
        new(OneOperator, Severity.Note, "A site has several operators, but one of them is recorded for nearly every run, as a preset field does.", "Check whether the form fills in the operator by itself."),
        new(OneResultForADay, Severity.Warning, "Every run of a site on one day has the same result, which is not negative.", "Check the entries of that day, the lot, and how the swabs were stored."),
        new(OutsideFollowUpCoverage, Severity.Note, "Runs that call for follow-up lie before the first or after the last run of their site that has a confirmatory specimen, so the confirmatory export may not cover that time.",
            "Check that the confirmatory export covers the whole time and every site."),
    ];
}
