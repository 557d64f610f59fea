using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Synthesis.Planning;

namespace ScreenStats.Synthesis.Simulation;

/// <summary>Everything that keeps a plan from being carried out.</summary>
internal static class PlanCheck
{
    /// <summary>Code of the diagnostics.</summary>
    public const string Code = "plan-unusable";

    private static readonly string[] Specimens = ["nasal", "nasopharyngeal", "throat", "saliva", "other"];
    private static readonly string[] Exports = ["screening", "confirmatory", "controls", "headcount", "sites"];
    private static readonly string[] Required = ["person", "site", "collected_at", "result"];

    public static IReadOnlyList<(string Key, string Message)> Faults(SynthesisPlan plan)
    {
        var faults = new List<(string Key, string Message)>();
        void Check(bool good, string key, string message)
        {
            if (!good) faults.Add((key, message));
        }

        void Share(double value, string key) => Check(value is >= 0 and <= 1, key, "write a share from 0 to 1.");
        void Names(IEnumerable<string> names, string key)
        {
            var all = names.ToArray();
            Check(all.Length > 0, key, "at least one is needed.");
            Check(all.All(name => !string.IsNullOrWhiteSpace(name)) && all.Distinct(StringComparer.Ordinal).Count() == all.Length, key,
                "every name must be there and differ from the others.");
        }

        Check(!string.IsNullOrWhiteSpace(plan.Title), "title", "write a title.");
        Check(plan.FirstDay.DayOfWeek == DayOfWeek.Monday, "firstDay", "write a Monday.");
        Check(plan.Weeks is >= 1 and <= 520, "weeks", "write a number from 1 to 520.");
        Check(plan.FirstDay.Year is >= 1900 and <= 2200, "firstDay", "write a year from 1900 to 2200.");
        if (faults.Count > 0) return faults;
        Names(plan.Sites.Select(site => site.Name), "sites");
        Names(plan.Kits.Select(kit => kit.Name), "kits");
        Names(plan.Lots.Select(lot => lot.Name), "lots");
        for (var index = 0; index < plan.Sites.Length; index++) Site(plan.Sites[index], Key("sites", index), Check, Share);
        for (var index = 0; index < plan.Kits.Length; index++) Kit(plan.Kits[index], Key("kits", index), Check, Share);
        for (var index = 0; index < plan.Lots.Length; index++) Lot(plan, plan.Lots[index], Key("lots", index), Check, Share);
        Infection(plan.Infection, Check, Share);
        Confirmation(plan.Confirmation, Check, Share);
        for (var index = 0; index < plan.Audits.Length; index++)
        {
            Share(plan.Audits[index].Share, Key("audits", index) + ".share");
            KnownSites(plan, plan.Audits[index].Sites, Key("audits", index) + ".sites", Check);
        }

        Share(plan.AbsentWeeksShare, "absentWeeksShare");
        Share(plan.RepeatShare, "repeatShare");
        Check(plan.Enrolment is null or (> 0 and <= 1), "enrolment", "write a share above 0, up to 1.");
        PlanSurroundings.Check(plan, Check);
        Columns(plan, Check);
        Dirt(plan.Dirt, Check, Share);
        Check(plan.Sites.Sum(site => (long)site.People) <= 1 << 24, "sites", "at most 16,777,216 people in all.");
        if (faults.Count == 0) LotsEverywhere(plan, Check);
        return faults;
    }

    public static string Key(string list, int index) => string.Create(CultureInfo.InvariantCulture, $"{list}[{index}]");

    private static void Site(SynthesisSite site, string key, Action<bool, string, string> check, Action<double, string> share)
    {
        check(site.Region is null || !string.IsNullOrWhiteSpace(site.Region), key + ".region", "write a name, or leave it out.");
        check(site.People >= 1, key + ".people", "write at least 1.");
        check(site.Operators is >= 1 and <= 1_000, key + ".operators", "write a number from 1 to 1000.");
        check(site.Participation is > 0 and <= 1, key + ".participation", "write a share above 0, up to 1.");
        share(site.InvalidRate, key + ".invalidRate");
        share(site.InconclusiveRate, key + ".inconclusiveRate");
        share(site.SelfCollectedShare, key + ".selfCollectedShare");
        share(site.LotMissingShare, key + ".lotMissingShare");
        check(site.IncidenceFactor is >= 0 and <= 1_000, key + ".incidenceFactor", "write a factor from 0 to 1000.");
        check(Specimens.Contains(site.Specimen), key + ".specimen", "write one of nasal, nasopharyngeal, throat, saliva, other.");
    }

    private static void Kit(SynthesisKit kit, string key, Action<bool, string, string> check, Action<double, string> share)
    {
        share(kit.PeakSensitivity, key + ".peakSensitivity");
        check(kit.PeakSensitivity > 0, key + ".peakSensitivity", "write a share above 0.");
        share(kit.Specificity, key + ".specificity");
        check(kit.RunsPerKit is >= 1 and <= 100_000, key + ".runsPerKit", "write a number from 1 to 100000.");
        check(kit.ReadFromMinutes >= 0 && kit.ReadToMinutes >= kit.ReadFromMinutes && kit.ReadToMinutes <= 240, key + ".readToMinutes",
            "write a window within 0 to 240 minutes that ends no earlier than it begins.");
    }

    private static void Lot(SynthesisPlan plan, SynthesisLot lot, string key, Action<bool, string, string> check, Action<double, string> share)
    {
        check(plan.Kits.Any(kit => kit.Name == lot.Kit), key + ".kit", "name one of the kits.");
        KnownSites(plan, lot.Sites, key + ".sites", check);
        if (lot.Fault is not { } fault) return;
        share(fault.FalsePositiveRate, key + ".fault.falsePositiveRate");
        KnownSites(plan, fault.Sites, key + ".fault.sites", check);
    }

    private static void KnownSites(SynthesisPlan plan, ImmutableArray<string> names, string key, Action<bool, string, string> check) =>
        check(names.All(name => plan.Sites.Any(site => site.Name == name)), key, "name only sites of the plan.");

    private static void Infection(SynthesisInfection infection, Action<bool, string, string> check, Action<double, string> share)
    {
        share(infection.BackgroundIncidence, "infection.backgroundIncidence");
        share(infection.WaveIncidence, "infection.waveIncidence");
        check(infection.WaveHalfWidthDays >= 1, "infection.waveHalfWidthDays", "write at least 1.");
        check(infection.DetectableFromDay is >= 1 and <= 100, "infection.detectableFromDay", "write a number from 1 to 100.");
        check(infection.DetectabilityByDay.Length is >= 1 and <= 100 && infection.DetectabilityByDay.All(factor => factor is > 0 and <= 1),
            "infection.detectabilityByDay", "write 1 to 100 factors above 0, up to 1.");
        check(infection.SymptomDay is >= 1 and <= 100, "infection.symptomDay", "write a number from 1 to 100.");
        share(infection.SymptomaticShare, "infection.symptomaticShare");
        share(infection.SymptomaticSpecimenShare, "infection.symptomaticSpecimenShare");
        share(infection.SymptomaticRunShare, "infection.symptomaticRunShare");
        share(infection.OtherSymptomsShare, "infection.otherSymptomsShare");
        share(infection.ExposedShare, "infection.exposedShare");
    }

    private static void Confirmation(SynthesisConfirmation confirmation, Action<bool, string, string> check, Action<double, string> share)
    {
        share(confirmation.FollowUpShare, "confirmation.followUpShare");
        share(confirmation.LateShare, "confirmation.lateShare");
        share(confirmation.RecordedBeforeShare, "confirmation.recordedBeforeShare");
        share(confirmation.IndeterminateShare, "confirmation.indeterminateShare");
        share(confirmation.RejectedShare, "confirmation.rejectedShare");
        share(confirmation.Sensitivity, "confirmation.sensitivity");
        share(confirmation.Specificity, "confirmation.specificity");
        share(confirmation.EarlyReturnShare, "confirmation.earlyReturnShare");
        // A specimen that never becomes conclusive is retaken for ever.
        check(confirmation.RetakeShare is >= 0 and <= 0.9, "confirmation.retakeShare", "write a share from 0 to 0.9.");
        check(confirmation.UsualDelayHours is >= 1 and <= 500, "confirmation.usualDelayHours", "write a number from 1 to 500.");
        check(confirmation.ReportFromHours is >= 1 and <= 1_000 && confirmation.ReportToHours >= confirmation.ReportFromHours && confirmation.ReportToHours <= 2_000,
            "confirmation.reportToHours", "write hours from 1 to 2000, the longest no shorter than the shortest.");
        check(confirmation.IsolationDays is >= 0 and <= 365, "confirmation.isolationDays", "write a number from 0 to 365.");
        check(confirmation.UnverifiedAwayDays is >= 0 and <= 365, "confirmation.unverifiedAwayDays", "write a number from 0 to 365.");
    }

    private static void Columns(SynthesisPlan plan, Action<bool, string, string> check)
    {
        var columns = plan.ScreeningColumns;
        check(columns.All(ScreeningWriter.Known.Contains) && columns.Distinct().Count() == columns.Length, "screeningColumns",
            "write canonical column names, each once.");
        check(Required.All(columns.Contains), "screeningColumns", "person, site, collected_at and result are needed.");
        check(plan.ScreeningHeadings.Keys.All(columns.Contains), "screeningHeadings", "name only columns that are written.");
        check(plan.ScreeningHeadings.Values.Distinct(StringComparer.Ordinal).Count() == plan.ScreeningHeadings.Count, "screeningHeadings",
            "two columns cannot share a heading.");
        check(plan.ScreeningWords.Values.Distinct(StringComparer.OrdinalIgnoreCase).Count() == plan.ScreeningWords.Count, "screeningWords",
            "two words cannot be written alike.");
        check(!plan.Sites.Any(site => site.ControlsAmongScreens) || columns.Contains("control"), "screeningColumns",
            "a site enters its control swabs among its screens: the column control is needed.");
    }

    private static void Dirt(SynthesisDirt dirt, Action<bool, string, string> check, Action<double, string> share)
    {
        share(dirt.Duplicates, "dirt.duplicates");
        share(dirt.Conflicts, "dirt.conflicts");
        share(dirt.UnreadableDates, "dirt.unreadableDates");
        share(dirt.UnknownWords, "dirt.unknownWords");
        share(dirt.BlankResults, "dirt.blankResults");
        share(dirt.MissingLots, "dirt.missingLots");
        share(dirt.MissingKits, "dirt.missingKits");
        share(dirt.MissingOperators, "dirt.missingOperators");
        share(dirt.BlankSymptoms, "dirt.blankSymptoms");
        share(dirt.UnreadableReadTimes, "dirt.unreadableReadTimes");
        share(dirt.Capitals, "dirt.capitals");
        share(dirt.ReadOutsideWindow, "dirt.readOutsideWindow");
        share(dirt.OverusedKits, "dirt.overusedKits");
        check(dirt.CarriageReturns.All(Exports.Contains), "dirt.carriageReturns", "name screening, confirmatory, controls, headcount or sites.");
        check(dirt.ByteOrderMarks.All(Exports.Contains), "dirt.byteOrderMarks", "name screening, confirmatory, controls, headcount or sites.");
    }

    private static void LotsEverywhere(SynthesisPlan plan, Action<bool, string, string> check)
    {
        foreach (var site in plan.Sites)
        {
            var lots = new LotUse(plan, site);
            for (var day = 0; day < 7 * plan.Weeks; day++)
            {
                if (day % 7 > 4 || lots.On(day).Length > 0) continue;
                check(false, "lots", $"no lot is in use at {site.Name} on {Dates.Text(plan.FirstDay.AddDays(day))}: every site needs one on every working day.");
                break;
            }
        }
    }
}
