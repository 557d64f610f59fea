using ScreenStats.Records.PersonLog.Scanning;

namespace ScreenStats.Records.PersonLog.Rows;

/// <summary>What is kept of a counted run that is not negative and of every control run, beside the log.</summary>
/// <param name="Record">Position of the row in the export.</param>
/// <param name="Seconds">As in <see cref="LogEntry.Seconds"/>.</param>
/// <param name="Code">Code of its shape in the sink's table.</param>
/// <param name="Operator">Code of the operator.</param>
/// <param name="Kit">Code of the kit.</param>
internal readonly record struct NotableRow(uint Record, uint Seconds, int Code, int Operator, int Kit);
