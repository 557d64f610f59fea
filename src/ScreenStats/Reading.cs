using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Records;
using ScreenStats.Reporting;

namespace ScreenStats;

/// <summary>What reading a program gave: what became of every row, what was found in the data, and what was counted.</summary>
public sealed class Reading
{
    internal Reading(ReadingResult result) => Result = result;

    /// <summary>What became of every row of every export.</summary>
    public ImmutableArray<LedgerCell> Ledger => Tally.Cells.Ledger;

    /// <summary>What was found in the data, in the order of exports, files and rows.</summary>
    public ImmutableArray<Diagnostic> Diagnostics => Result.Diagnostics;

    /// <summary>Everything that was counted; holds no row and no person.</summary>
    public Tally Tally => Result.Tally;

    /// <summary>The whole result: also the files read, the rows set aside, and how each export was understood.</summary>
    public ReadingResult Result { get; }

    /// <summary>What a report says about where its findings come from: the files read, what was found in them, and the rows set aside.</summary>
    /// <param name="options">Options as they were given, without paths; null for none.</param>
    /// <returns>The second argument of <see cref="Report.Write"/> after the folder; findings alone make a report too.</returns>
    public ReportInputs ToReportInputs(IReadOnlyDictionary<string, string>? options = null) => new()
    {
        Options = (options ?? ImmutableSortedDictionary<string, string>.Empty).ToImmutableSortedDictionary(StringComparer.Ordinal),
        Files = [.. Result.Inputs.Select(input => new Reporting.InputFile(input.Name, input.Sha256))],
        Diagnostics = Diagnostics,
        SetAside = Result.SetAside.Select(row => new SetAsideLine(row.File, row.Line, row.Code, row.Reason, row.FirstLine, row.Text)),
    };
}
