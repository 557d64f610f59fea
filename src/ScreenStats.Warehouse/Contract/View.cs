using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;

namespace ScreenStats.Warehouse.Contract;

/// <summary>A view as it was found: which of the agreed columns it has.</summary>
internal sealed class View
{
    private readonly HashSet<string> columns;

    /// <param name="export">What it holds.</param>
    /// <param name="name">Its name, <c>schema.view</c>, checked when the program file was read.</param>
    /// <param name="found">Its columns and their types, as the database calls them.</param>
    /// <param name="bucketNeeded">True where people are divided among servers.</param>
    /// <exception cref="UnusableDataException">It is not as agreed: everything that is wrong.</exception>
    public View(ExportKind export, string name, IReadOnlyDictionary<string, string> found, bool bucketNeeded)
    {
        Export = export;
        Name = name;
        Quoted = string.Join('.', name.Split('.').Select(part => $"\"{part}\""));
        columns = new(StringComparer.Ordinal);
        var faults = new List<Diagnostic>();
        if (found.Count == 0)
        {
            throw new UnusableDataException(Fault("", $"There is no view \"{name}\" that may be read. Check its name under warehouse in the program file, and that the user may select from it."));
        }

        foreach (var column in export == ExportKind.Screening ? ViewContract.Screening : ViewContract.Confirmatory)
        {
            var needed = column.Required || (bucketNeeded && export == ExportKind.Screening && column.Name == ViewContract.Bucket);
            if (!found.TryGetValue(column.Name, out var type))
            {
                if (needed) faults.Add(Fault(column.Name, $"The view {name} has no column {column.Name}, which is {Words(column.Type)}.{(column.Name == ViewContract.Bucket ? " People are divided among several servers, so it is needed." : "")} Add it to the view."));
            }
            else if (!Is(type, column.Type))
            {
                faults.Add(Fault(column.Name, $"The column {column.Name} of the view {name} is {type.ToLowerInvariant()}; agreed is {Words(column.Type)}. Cast it in the view."));
            }
            else columns.Add(column.Name);
        }

        if (faults.Count > 0) throw new UnusableDataException([.. faults]);
    }

    public ExportKind Export { get; }

    /// <summary>The name for messages.</summary>
    public string Name { get; }

    /// <summary>The name for queries.</summary>
    public string Quoted { get; }

    public bool Has(string column) => columns.Contains(column);

    private static Diagnostic Fault(string column, string message) => new(WarehouseDiagnostics.WrongView, Severity.Error, "", null, column, message);

    private static string Words(ViewType type) => type switch
    {
        ViewType.Text => "text",
        ViewType.Time => "timestamp with time zone",
        ViewType.Date => "date",
        ViewType.YesNo => "boolean",
        _ => "integer or bigint",
    };

    private static bool Is(string found, ViewType type)
    {
        var name = found.ToUpperInvariant();
        return type switch
        {
            ViewType.Text => name is "TEXT" or "CHARACTER VARYING" or "CHARACTER" or "VARCHAR" || name.StartsWith("ENUM(", StringComparison.Ordinal),
            ViewType.Time => name is "TIMESTAMP WITH TIME ZONE",
            ViewType.Date => name is "DATE",
            ViewType.YesNo => name is "BOOLEAN",
            _ => name is "BIGINT" or "INTEGER" or "SMALLINT",
        };
    }
}
