using System.Text.Json;

namespace ScreenStats.Counting.Programs.Reading;

/// <summary>Reads where a warehouse is and what its views are called.</summary>
internal static class WarehouseSection
{
    private const int LongestName = 63;

    public static WarehouseSettings? Read(JsonItem? item, ProgramProblems problems)
    {
        if (item is null) return null;
        var section = new ProgramSection(item, ProgramKeys.Warehouse, "key", problems);
        if (item.Kind != JsonValueKind.Object) return null;
        foreach (var needed in (ReadOnlySpan<string>)["url", "screening"])
        {
            if (section.Find(needed) is null) problems.WrongValue(item, $"given with \"{needed}\"");
        }

        return new WarehouseSettings
        {
            Url = Url(section, problems) ?? "",
            Screening = View(section, "screening", problems) ?? "",
            Confirmatory = View(section, "confirmatory", problems),
            TimeoutSeconds = section.Whole("timeoutSeconds", 1, 86_400, "a whole number of seconds from 1 to 86400") ?? WarehouseSettings.DefaultTimeoutSeconds,
        };
    }

    private static string? Url(ProgramSection section, ProgramProblems problems)
    {
        if (section.Text("url") is not { } url) return null;
        const string expected = "\"postgresql://host:port/database\", or \"duckdb:\" and the name of a file in the program's folder";
        if (url.StartsWith("duckdb:", StringComparison.Ordinal))
        {
            if (url.Length > "duckdb:".Length && !url.Contains("://", StringComparison.Ordinal) && !url.Any(char.IsControl)) return url;
        }
        else if (Uri.TryCreate(url, UriKind.Absolute, out var parsed) && parsed.Scheme is "postgresql" or "postgres")
        {
            if (parsed!.UserInfo.Length > 0 || parsed.Query.Length > 0)
            {
                problems.WrongValue(section.Find("url")!, "without a user, a password and options: they come from the environment (PGUSER, PGPASSWORD or PGPASSFILE, PGSSLMODE), never from a program file");
                return null;
            }

            if (parsed.Host.Length > 0 && parsed.Fragment.Length == 0 && parsed.AbsolutePath.Trim('/') is { Length: > 0 } database && !database.Contains('/', StringComparison.Ordinal)) return url;
        }

        problems.WrongValue(section.Find("url")!, expected);
        return null;
    }

    private static string? View(ProgramSection section, string key, ProgramProblems problems)
    {
        if (section.Text(key) is not { } name) return null;
        var parts = name.Split('.');
        if (parts.Length == 2 && parts.All(IsName)) return name;
        problems.WrongValue(section.Find(key)!, "\"schema.view\", each of at most 63 letters, figures and underscores that does not begin with a figure");
        return null;
    }

    private static bool IsName(string part) => part.Length is > 0 and <= LongestName && !char.IsAsciiDigit(part[0]) && part.All(sign => char.IsAsciiLetterOrDigit(sign) || sign == '_');
}
