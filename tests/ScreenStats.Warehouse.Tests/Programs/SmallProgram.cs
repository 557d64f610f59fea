using System.Globalization;

namespace ScreenStats.Warehouse.Tests.Programs;

/// <summary>A small program, written as rows once: every road is given the same.</summary>
/// <param name="Name">A name for messages and folders: small letters and hyphens.</param>
/// <param name="Settings">Members of the program file, without its braces; empty for none.</param>
/// <param name="Screening">Rows of the screening export in their order.</param>
/// <param name="Confirmatory">Rows of the confirmatory export in their order; null where there is none.</param>
/// <param name="Files">Further exports that every road reads as files, by name.</param>
internal sealed record SmallProgram(string Name, string Settings, IReadOnlyList<Row> Screening, IReadOnlyList<Row>? Confirmatory, IReadOnlyDictionary<string, string> Files)
{
    /// <summary>The columns of a screening run, in the order in which files have them.</summary>
    public static readonly string[] ScreeningColumns =
        ["screen_id", "person", "site", "collected_at", "read_at", "result", "lot", "kit", "lot_expiry", "operator", "specimen", "collection", "symptomatic", "exposed", "outbreak", "control"];

    /// <summary>The columns of a specimen.</summary>
    public static readonly string[] ConfirmatoryColumns = ["person", "collected_at", "result", "reported_at", "method", "reason", "sampling_stratum"];

    /// <summary>The program's time zone; null where it states none.</summary>
    public TimeZoneInfo? Zone { get; init; }

    /// <summary>A program from the text of its rows, whose first line names the columns that are not blank everywhere.</summary>
    public static SmallProgram Of(string name, string? zone, string screening, string? confirmatory = null, string settings = "", IReadOnlyDictionary<string, string>? files = null)
    {
        var stated = zone is null ? "" : $"\"timeZone\": \"{zone}\"";
        return new SmallProgram(name, string.Join(", ", new[] { stated, settings }.Where(one => one.Length > 0)), Row.Of(screening), confirmatory is null ? null : Row.Of(confirmatory), files ?? new Dictionary<string, string>())
        {
            Zone = zone is null ? null : TimeZoneInfo.FindSystemTimeZoneById(zone),
        };
    }

    /// <summary>The program file; with a member more where there is one.</summary>
    public string ProgramFile(string? more = null) => "{ " + string.Join(", ", new[] { Settings, more ?? "" }.Where(one => one.Length > 0)) + " }";

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Name} ({Screening.Count} runs)");
}
