using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Completeness;

/// <summary>How much of each column is recorded, in the order of the exports' contract as the reader delivers it.</summary>
internal static class CompletenessAnalysis
{
    public static CompletenessFindings Of(Tally tally)
    {
        ImmutableArray<CompletenessRow> Rows(ExportKind export) =>
        [
            .. tally.Cells.Completeness
                .Where(cell => cell.Export == export)
                .Select(cell => new CompletenessRow($"{LevelNames.Of(export)}:{cell.Column}", LevelNames.Of(export), cell.Column, cell.Mapped, cell.Rows, cell.Recorded)),
        ];

        var findings = new CompletenessFindings
        {
            Screening = Rows(ExportKind.Screening),
            Confirmatory = Rows(ExportKind.Confirmatory),
            Controls = Rows(ExportKind.Controls),
            Headcount = Rows(ExportKind.Headcount),
            Sites = Rows(ExportKind.Sites),
            OutbreakRuns = tally.Cells.Screens.Sum(cell => cell.Occasion == Occasion.Outbreak ? cell.Runs : 0),
            Tables = [],
            Sentences = [],
        };
        return findings with
        {
            Tables = [CompletenessTables.Completeness([.. findings.Screening, .. findings.Confirmatory, .. findings.Controls, .. findings.Headcount, .. findings.Sites])],
            Sentences = CompletenessSentences.Of(findings, tally.Cells.Screens.Sum(cell => cell.Runs)),
        };
    }
}
