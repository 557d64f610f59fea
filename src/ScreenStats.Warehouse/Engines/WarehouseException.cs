using ScreenStats.Counting.Diagnostics;

namespace ScreenStats.Warehouse.Engines;

/// <summary>What went wrong between here and the database.</summary>
/// <param name="code">Code of <see cref="WarehouseDiagnostics"/>.</param>
/// <param name="message">What, where, what to do; never what a database wrote, which may quote a row.</param>
/// <param name="again">True where all may be read once more from the start.</param>
internal sealed class WarehouseException(string code, string message, bool again = false) : Exception(message)
{
    /// <summary>True where all may be read once more from the start.</summary>
    public bool Again => again;

    public UnusableDataException Refusal => new(new Diagnostic(code, Severity.Error, "", null, "", Message));
}
