using System.Collections.Immutable;
using System.Data.Common;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Warehouse.Sql;

namespace ScreenStats.Warehouse.Engines;

/// <summary>One reading of a database: a connection that cannot write, and sees one state throughout.</summary>
internal abstract class Engine(CancellationToken cancellation) : IDisposable
{
    /// <summary>How it writes.</summary>
    public abstract Dialect Dialect { get; }

    /// <summary>Lines and bytes that came over the connection; bytes as far as values tell.</summary>
    public long LinesRead { get; private set; }

    /// <summary>The columns of a view and their types, as the database calls them; none where there is no such view.</summary>
    public IReadOnlyDictionary<string, string> Columns(string view)
    {
        var columns = new Dictionary<string, string>(StringComparer.Ordinal);
        var parts = view.Split('.');
        Read(new Statement($"SELECT column_name, data_type FROM information_schema.columns WHERE table_schema = '{parts[0]}' AND table_name = '{parts[1]}'{OwnCatalog}") { What = "the columns of the views" },
            line => columns[line.Text(0)!] = line.Text(1)!);
        return columns;
    }

    /// <summary>True where the rows of a view lie on other servers.</summary>
    public abstract bool IsSharded(string quotedView);

    /// <summary>Why shards do not group by themselves what they should; null where they do.</summary>
    public abstract string? WhyNotPushed(Statement statement);

    /// <summary>The condition that a row is of a person and day of a list, with its parameters, numbered from 1; in pieces of a size that a query can hold.</summary>
    public abstract IEnumerable<(string Condition, ImmutableArray<object> Parameters)> OnDays(IReadOnlyList<(string Person, long Day)> days);

    /// <summary>Reads the lines of a query.</summary>
    public void Read(Statement statement, Action<Line> take)
    {
        cancellation.ThrowIfCancellationRequested();
        var first = true;
        try
        {
            using var command = Command(statement);
            using var stop = cancellation.Register(static running => ((DbCommand)running!).Cancel(), command);
            using var limit = Limit(command);
            using var reader = command.ExecuteReader();
            while (reader.Read())
            {
                first = false;
                LinesRead++;
                take(new Line(reader));
            }
        }
        catch (Exception failure) when (failure is not (UnusableDataException or OutOfMemoryException))
        {
            cancellation.ThrowIfCancellationRequested();
            if (Explain(failure, statement, first) is { } fault) throw fault;
            throw;
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Dispose(true);
        GC.SuppressFinalize(this);
    }

    protected virtual string OwnCatalog => "";

    protected virtual void Dispose(bool disposing)
    {
    }

    protected abstract DbCommand Command(Statement statement);

    /// <summary>What gives a query up that takes too long, where the engine does not do so by itself.</summary>
    protected virtual IDisposable? Limit(DbCommand command) => null;

    /// <summary>What an engine's exception means; null where it means nothing known.</summary>
    protected abstract WarehouseException? Explain(Exception failure, Statement statement, bool beforeFirst);
}
