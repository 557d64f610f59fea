using ScreenStats.Counting.Ledger;
using ScreenStats.Records.PersonLog.Checks;

namespace ScreenStats.Records.PersonLog;

/// <summary>A valid row that counting took out again, after it was checked against the file.</summary>
/// <param name="Export">Which export.</param>
/// <param name="Record">Position of the row among all rows of the export.</param>
/// <param name="Code"><see cref="CountingDiagnostics.Duplicate"/> or <see cref="CountingDiagnostics.ConflictingScreenId"/>.</param>
/// <param name="First">The earlier row that it repeats or contradicts.</param>
internal readonly record struct RemovedRow(ExportKind Export, uint Record, string Code, uint First);
