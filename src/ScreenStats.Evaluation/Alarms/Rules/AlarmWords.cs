using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Alarms.Rules;

/// <summary>What alarms say. Numbers are invariant, so that a day's alarms are the same bytes everywhere.</summary>
internal static class AlarmWords
{
    public static string What(AlarmRule rule, Place place) => place.Words + rule switch
    {
        AlarmRule.LotEvidence => ": more refuted positives than the other lots at the same sites on the same days",
        AlarmRule.InvalidEvidence => ": the invalid-run rate is above the limit",
        AlarmRule.InvalidRise => ": more invalid runs than is ordinary there",
        AlarmRule.ControlFailed => ": a control swab did not show what it should, and none of its kind has passed since",
        AlarmRule.ControlMissing => ": a control swab that the program's rules ask for was not run, or did not pass",
        AlarmRule.ExpiredLot => ": used after it had expired",
        AlarmRule.KitOverrun => ": more runs recorded than a kit holds",
        AlarmRule.RefutedRise => ": refuted positives come faster than before at this site",
        AlarmRule.LowYield => ": fewer confirmed positives than the other lots at the same sites on the same days",
        _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "Not a rule."),
    };

    public static string Next(AlarmRule rule) => rule switch
    {
        AlarmRule.LotEvidence => "Quarantine the lot until it is cleared, run positive and negative controls on it, and tell its maker; send its positives to the confirmatory test as before.",
        AlarmRule.InvalidEvidence => "Run controls; watch how swabs and drops are handled, and retrain; repeat invalid runs with another device on the same day.",
        AlarmRule.InvalidRise => "Find out what changed (lot, operators, storage, temperature); run controls, retrain, and repeat invalid runs on the same day.",
        AlarmRule.ControlFailed => "Stop using the lot at that site and hold its results, as its instructions say; repeat the control with another device, and release the lot when it passes.",
        AlarmRule.ControlMissing => "Run a positive and a negative control before the next screen, and record site, lot and operator with them.",
        AlarmRule.ExpiredLot => "Take the lot out of use; ask the maker whether its expiry was extended; local rules say whether its runs are repeated.",
        AlarmRule.KitOverrun => "Look at how kits are recorded there: a kit may have been changed without its number.",
        AlarmRule.RefutedRise => "Quarantine the lots named until it is cleared which is at fault, lot or site: run controls on them, watch how tests are done, use another lot meanwhile.",
        AlarmRule.LowYield => "Run weak positive controls on the lot beside another one, and re-test people with symptoms or known contact with another lot.",
        _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "Not a rule."),
    };

    public static AlarmEvidence Of(EvidenceTrack track, bool excess)
    {
        var kind = excess ? "refuted" : "confirmed";
        var since = track.RisingSince is { } day && track.ObservationsSince < track.Observations
            ? $" (from {Day(day)}: {track.EventsSince} of {track.ObservationsSince}, {Number(track.ExpectedSince)} expected)" : "";
        return new AlarmEvidence(
            $"{track.Events} of {track.Observations} {kind} positives fell on it, {Number(track.Expected)} expected{since}; evidence {Odds(track.Evidence)}, alarm from {Odds(track.Threshold.Evidence)}",
            track.Events, track.Observations, track.Expected, track.Evidence, track.Threshold.Evidence, track.RisingSince);
    }

    public static AlarmEvidence OfInvalid(EvidenceTrack track, double limit, long recentRuns, long recentUnusable) => new(
        $"{track.Events} of {Count(track.Observations)} runs unusable ({Share(track.Events, track.Observations)}), limit {Percent(limit)}; last 28 days {recentUnusable} of {Count(recentRuns)}; "
            + $"evidence {Odds(track.Evidence)}, alarm from {Odds(track.Threshold.Evidence)}",
        track.Events, track.Observations, track.Expected, track.Evidence, track.Threshold.Evidence, track.RisingSince);

    public static AlarmEvidence OfRise(DateOnly start, long runs, long unusable, double ordinary, double sum, double limit) => new(
        $"{unusable} of {Count(runs)} runs unusable since {Day(start)} ({Share(unusable, runs)}), {Number(ordinary * runs)} expected at the ordinary {Percent(ordinary)}; sum {Number(sum)}, limit {Number(limit)}",
        unusable, runs, ordinary * runs, sum, limit, start);

    public static AlarmEvidence OfRefutedRise(RefutedRiseRule.Track track) => new(
        $"{track.Found} in {Count(track.Tests)} valid tests since {Day(track.From)}, {track.Before} in {Count(track.TestsBefore)} before; lots {string.Join(", ", track.Lots.Take(3).Select(lot => $"{lot.Lot} {lot.Runs}"))}"
            + $"{(track.Lots.Count > 3 ? $", {track.Lots.Count - 3} more" : "")}; evidence {Odds(Math.Exp(track.LogEvidence))}, alarm from {Odds(track.Threshold.Evidence)}",
        track.Found, track.Tests, track.TestsBefore == 0 ? null : (double)track.Before / track.TestsBefore * track.Tests, Math.Min(double.MaxValue, Math.Exp(track.LogEvidence)), track.Threshold.Evidence, track.From);

    public static AlarmEvidence OfFailed(IReadOnlyList<(ControlExpectation Expected, long Failed)> failed, DateOnly last) => new(
        string.Join(" and ", failed.Select(one => $"{one.Failed} {LevelNames.Of(one.Expected)} {Figure.Plural(one.Failed, "control", "controls")}")) + $" failed, the last on {Day(last)}",
        failed.Sum(one => one.Failed));

    public static string OfStart(string by, DateOnly since, long days) =>
        $"{by switch { "operator" => "first run of the operator", "site" => "first run of the site", _ => "first use of the lot at the site" }} on {Day(since)} without a passed control; "
        + $"{days} {Figure.Plural(days, "day", "days")} of use since";

    public static string OfDaily(DateOnly since, long days) => $"no passed control on {days} {Figure.Plural(days, "day", "days")} of screening in a row, from {Day(since)} on";

    public static string OfConduct(AlarmRule rule, long runs, DateOnly last, IReadOnlyList<(string Level, long Runs)> parts) =>
        $"{runs} {Figure.Plural(runs, "run", "runs")} {(rule == AlarmRule.ExpiredLot ? "after its expiry" : "too many")} in the last {AlarmEngine.RecentDays} days, the last on {Day(last)}: "
        + string.Join(", ", parts.Take(4).Select(part => $"{part.Level} {part.Runs}")) + (parts.Count > 4 ? $", {parts.Count - 4} more" : "");

    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    public static string Percent(double share) => (share * 100).ToString("0.##", CultureInfo.InvariantCulture) + " %";

    private static string Share(long part, long whole) => whole == 0 ? "no runs" : Percent((double)part / whole);

    private static string Count(long value) => value.ToString("N0", CultureInfo.InvariantCulture);

    private static string Number(double value) => value.ToString(value >= 100 ? "#,0" : "0.0", CultureInfo.InvariantCulture);

    private static string Odds(double evidence) => evidence >= 1e6 ? "over a million to 1" : evidence.ToString(evidence < 10 ? "0.0" : "#,0", CultureInfo.InvariantCulture) + " to 1";
}
