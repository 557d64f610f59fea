using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Conduct;

/// <summary>How runs were carried out. What the data or the program file do not allow to tell is undefined, never zero.</summary>
internal static class ConductAnalysis
{
    public static ConductFindings Of(Tally tally, PersonSums people, ProgramSettings settings)
    {
        var runs = tally.Cells.Screens.Sum(cell => cell.Runs);
        var runsBySite = tally.Cells.Screens.GroupBy(cell => cell.Site, StringComparer.Ordinal).ToDictionary(site => site.Key, site => site.Sum(cell => cell.Runs), StringComparer.Ordinal);
        var runsByLot = tally.Cells.Screens.GroupBy(cell => cell.Lot, StringComparer.Ordinal).ToDictionary(lot => lot.Key, lot => lot.Sum(cell => cell.Runs), StringComparer.Ordinal);

        string? Unknown(ConductKind kind) => tally.Cells.Conduct.Any(cell => cell.Kind == kind) ? null : WhyUnknown(kind, tally, settings);

        ConductRow Program(ConductKind kind)
        {
            var found = tally.Cells.Conduct.Where(cell => cell.Kind == kind).Sum(cell => cell.Runs);
            var unknown = Unknown(kind);
            return new ConductRow(LevelNames.Of(kind) + "|program|", LevelNames.Of(kind), Grouping.Program, "", unknown is null ? found : null, unknown, runs);
        }

        IEnumerable<ConductRow> Places(Grouping grouping, Func<ConductCell, string> level, Dictionary<string, long> all) => tally.Cells.Conduct
            .Where(cell => cell.Kind != ConductKind.ReadingNotRecorded)
            .GroupBy(cell => (cell.Kind, Level: level(cell)))
            .OrderBy(place => place.Key.Kind).ThenBy(place => place.Key.Level, Levels.Order)
            .Select(place => new ConductRow(
                $"{LevelNames.Of(place.Key.Kind)}|{LevelNames.Of(grouping)}|{place.Key.Level}", LevelNames.Of(place.Key.Kind), grouping, place.Key.Level,
                place.Sum(cell => cell.Runs), null, all.GetValueOrDefault(place.Key.Level)));

        var findings = new ConductFindings
        {
            ExpiredLot = Program(ConductKind.ExpiredLot),
            ReadOutsideWindow = Program(ConductKind.ReadOutsideWindow),
            BeyondKitContents = Program(ConductKind.BeyondKitContents),
            WithinIsolation = Program(ConductKind.WithinIsolation),
            Places = [.. Places(Grouping.Site, cell => cell.Site, runsBySite), .. Places(Grouping.Lot, cell => cell.Lot, runsByLot)],
            Rates = ConductRates.Of(tally.Cells, settings, Unknown),
            Contrasts = ConductContrasts.Of(tally.Cells, people, settings.Report.Confidence),
            ConductTable = ConductTables.Conduct([]),
            RateTable = ConductTables.Rates([]),
            ContrastTable = ConductTables.Contrasts([]),
            Sentences = [],
        };
        ImmutableArray<ConductRow> rows = [findings.ExpiredLot, findings.ReadOutsideWindow, findings.BeyondKitContents, findings.WithinIsolation, .. findings.Places];
        return findings with
        {
            ConductTable = ConductTables.Conduct(rows),
            RateTable = ConductTables.Rates(findings.Rates),
            ContrastTable = ConductTables.Contrasts([.. findings.Contrasts.SelectMany(ConductTables.Rows)]),
            Sentences = [.. ConductSentences.Of(findings), .. ConductRateSentences.Of(findings)],
        };
    }

    private static string? WhyUnknown(ConductKind kind, Tally tally, ProgramSettings settings)
    {
        bool Recorded(string column) => tally.Cells.Completeness.Any(cell => cell.Export == ExportKind.Screening && cell.Column == column && cell.Recorded > 0);
        return kind switch
        {
            ConductKind.ExpiredLot => Recorded("lot_expiry") ? null : "no expiry of lots is recorded",
            ConductKind.ReadOutsideWindow => !Recorded("read_at") ? "no reading time is recorded"
                : settings.Screens.Any(screen => screen.ReadFromMinutes is not null || screen.ReadToMinutes is not null) ? null
                : "the program file states no reading window",
            ConductKind.BeyondKitContents => !Recorded("kit") ? "no kit is recorded"
                : settings.Screens.Any(screen => screen.RunsPerKit is not null) ? null
                : "the program file states no number of runs per kit",
            ConductKind.WithinIsolation => settings.Policy.IsolationDays is null ? "the program file states no length of isolation: local rules set it"
                : tally.Cells.HasConfirmatory ? null : "there is no confirmatory export",
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a finding of conduct."),
        };
    }
}
