using ScreenStats.Warehouse.Engines;
using ScreenStats.Warehouse.Sql;

namespace ScreenStats.Warehouse.Reading;

/// <summary>Asks an engine, and looks first whether shards group by themselves.</summary>
internal sealed class Asking(Engine engine, bool sharded)
{
    private readonly List<string> notPushed = [];

    public Dialect Dialect => engine.Dialect;

    /// <summary>True where people are divided among servers, so that the bucket stands before the keys.</summary>
    public bool Sharded => sharded;

    /// <summary>What shards do not group by themselves.</summary>
    public IReadOnlyList<string> NotPushed => notPushed;

    /// <summary>Lines read so far.</summary>
    public long Lines => engine.LinesRead;

    public void Read(Statement statement, Action<Line> take)
    {
        if (sharded && statement.Grouped && engine.WhyNotPushed(statement) is { } why) notPushed.Add(why);
        engine.Read(statement, take);
    }

    /// <summary>Reads counts: the keys stand from the place given on, the count behind them.</summary>
    public void Read(Statement statement, int keys, Action<Line, int, long> take) => Read(statement, line => take(line, 0, line.Whole(keys)));

    /// <summary>Reads the rows of people on days.</summary>
    public void ReadDays(ScreeningSql sql, string what, IReadOnlyList<(string Person, long Day)> days, Action<Line> take)
    {
        foreach (var (condition, parameters) in engine.OnDays(days)) engine.Read(sql.Rows(what, $"{sql.OnPerson} AND {condition}", parameters), take);
    }
}
