using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Ledger;

/// <summary>What became of every row.</summary>
internal static class LedgerAnalysis
{
    private static readonly ImmutableArray<LedgerEntry> OfScreening = [.. Enum.GetValues<LedgerEntry>()];
    private static readonly ImmutableArray<LedgerEntry> OfOthers = [LedgerEntry.SetAside, LedgerEntry.Duplicate, LedgerEntry.Counted];

    public static LedgerFindings Of(Tally tally)
    {
        var counts = tally.Cells.Ledger
            .GroupBy(cell => (cell.Export, cell.Entry))
            .ToDictionary(entry => entry.Key, entry => entry.Sum(cell => cell.Rows));
        long Rows(ExportKind export, LedgerEntry entry) => counts.GetValueOrDefault((export, entry));

        var rows = ImmutableArray.CreateBuilder<LedgerRow>();
        foreach (var export in counts.Keys.Select(key => key.Export).Append(ExportKind.Screening).Distinct().Order())
        {
            var name = LevelNames.Of(export);
            var entries = OfScreening
                .Where(entry => export == ExportKind.Screening || OfOthers.Contains(entry) || Rows(export, entry) > 0)
                .ToList();
            rows.Add(new LedgerRow($"{name}:read", name, "read", entries.Sum(entry => Rows(export, entry))));
            foreach (var entry in entries)
                rows.Add(new LedgerRow($"{name}:{LevelNames.Of(entry)}", name, LevelNames.Of(entry), Rows(export, entry)));
        }

        var findings = new LedgerFindings
        {
            Read = OfScreening.Sum(entry => Rows(ExportKind.Screening, entry)),
            Counted = Rows(ExportKind.Screening, LedgerEntry.Counted),
            SetAside = Rows(ExportKind.Screening, LedgerEntry.SetAside),
            Duplicates = Rows(ExportKind.Screening, LedgerEntry.Duplicate),
            ControlRuns = Rows(ExportKind.Screening, LedgerEntry.ControlRun),
            KeptOut = Rows(ExportKind.Screening, LedgerEntry.KeptOutSymptomatic) + Rows(ExportKind.Screening, LedgerEntry.KeptOutExposed),
            Rows = rows.ToImmutable(),
            Tables = [LedgerTables.Ledger(rows.ToImmutable())],
            Sentences = [],
        };
        return findings with { Sentences = LedgerSentences.Of(findings, tally.Cells.HasConfirmatory) };
    }
}
