using System.Collections;
using System.Globalization;
using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Reflection;
using System.Text.Json.Serialization;
using ScreenStats.Evaluation.Disclosure.Counts;
using ScreenStats.Evaluation.Disclosure.Rules;
using ScreenStats.Evaluation.Disclosure.Tables;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Disclosure;

/// <summary>What of some findings may be seen: decided once, asked by everything that shows a figure.</summary>
public sealed class ReleaseDisclosure
{
    /// <summary>Parts of a row whose figures have the meaning that the row's columns of the same names have.</summary>
    private static readonly HashSet<Type> PartsOfRows =
    [
        typeof(Clusters.ProportionFinding), typeof(TruePrevalence.TruePrevalenceFinding), typeof(TruePrevalence.PrevalenceEstimate), typeof(Expected.CurvePoint),
        typeof(EstimateFinding), typeof(Kits.DifferenceFinding),
    ];

    private readonly Findings findings;
    private readonly HiddenCells cells;
    private readonly Dictionary<string, ColumnRule> figures;
    private readonly Dictionary<object, (string Table, Row Row)> owners = new(ReferenceEqualityComparer.Instance);

    internal ReleaseDisclosure(Findings findings, HiddenCells cells, Dictionary<string, ColumnRule> figures, long threshold, CountModel model, SuppressionPlan plan, ReidentificationRisk? risk, bool compared)
    {
        this.findings = findings;
        this.cells = cells;
        this.figures = figures;
        SuppressBelow = threshold;
        Model = model;
        Risk = risk;
        ComparedWithEarlierRelease = compared;
        NotProtected = plan.Unprotected.Count;
        foreach (var table in findings.AllTables)
        {
            if (table is not IEnumerable rows) continue;
            var index = 0;
            var names = Row.Names(table);
            foreach (var row in rows.Cast<object>()) Own(row, table.Id, Row.Of(table, names, index++), 0);
        }

        OwnPredictiveValues();
        foreach (var device in findings.Kits.Devices) Own(device, "kits", new Row(name => name switch { "device" => device.Device, "measure" => "invalid-runs", _ => "" }), 2);
        var veiled = findings.AllTables.Select(table => new VeiledTable(table, cells)).ToList();
        HiddenCounts = model.Variables.Count(variable => variable.Hidden);
        HiddenCells = veiled.Sum(table => (long)table.HiddenCount);
        TablesLeftOut = [.. findings.AllTables.Where(table => !cells.Keeps(table.Id)).Select(table => table.Id)];
    }

    /// <summary>Counts from 1 to one less than this are hidden.</summary>
    public long SuppressBelow { get; }

    /// <summary>Different counts that are hidden: the small ones, and those that would give them away.</summary>
    public long HiddenCounts { get; }

    /// <summary>Cells of tables that are hidden, for one of these counts or because they are drawn from counts finer than any table's.</summary>
    public long HiddenCells { get; }

    /// <summary>Tables that are left empty: their counts are too fine, or not in the model by which the hiding is proved.</summary>
    public ImmutableArray<string> TablesLeftOut { get; }

    /// <summary>Whether an earlier release was taken into account.</summary>
    public bool ComparedWithEarlierRelease { get; }

    /// <summary>Counts that hiding cannot protect any more, because the earlier release gives them away.</summary>
    public int NotProtected { get; }

    /// <summary>How well the counted rows hide among each other by site, period and lot; null where no tally was at hand.</summary>
    public ReidentificationRisk? Risk { get; }

    /// <summary>The counts, for the audit.</summary>
    [JsonIgnore]
    internal CountModel Model { get; }

    /// <summary>A table as it may be seen.</summary>
    /// <param name="table">A table of the findings, or some of its rows.</param>
    /// <returns>The table with hidden cells, and without rows that are too fine.</returns>
    public ITable Veil(ITable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        return table is VeiledTable ? table : cells.Veil(table);
    }

    /// <summary>An analysis as it may be seen.</summary>
    /// <param name="finding">The analysis.</param>
    /// <returns>Its tables and sentences.</returns>
    public IFinding Veil(IFinding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        if (finding is VeiledFinding) return finding;
        var tables = finding.Tables.Select(Veil).ToImmutableArray();
        var whole = finding.Tables.All(table => cells.Keeps(table.Id)) && !tables.Any(HidesCount);
        // What is highest or lowest of all bounds the hidden ones too.
        var kept = finding.Sentences.Where(sentence => whole || !Superlative(sentence)).Select(sentence => Seen(sentence, without: whole)).OfType<Sentence>().ToList();
        if (kept.Count < finding.Sentences.Length) kept.Add(new Sentence("What rests on hidden counts is left out here."));
        return new VeiledFinding(tables, [.. kept]);
    }

    /// <summary>
    /// A sentence as it may be read: each of its figures may be seen. Limits widened for clusters stand on counts by person and site-week, so
    /// the unwidened ones take their place.
    /// </summary>
    /// <param name="sentence">The sentence.</param>
    /// <param name="without">Whether a sentence without a figure may be read.</param>
    /// <returns>The sentence; null where it may not be read.</returns>
    public Sentence? Seen(Sentence sentence, bool without)
    {
        ArgumentNullException.ThrowIfNull(sentence);
        var numbers = sentence.Figures.Count(figure => figure.Value.Kind is not (CellKind.Text or CellKind.Date or CellKind.Empty));
        if (numbers == 0) return without ? sentence : null;
        var (figures, plain) = (ImmutableArray.CreateBuilder<FigureReference>(), false);
        foreach (var figure in sentence.Figures)
        {
            if (figure.Value.Kind is CellKind.Text or CellKind.Date or CellKind.Empty || Shows(figure.Id)) figures.Add(figure);
            else if (Coarse(figure.Id) is { } limit) figures.Add(new FigureReference(figure.Id, Cell.Number(limit), figure.Unit));
            else if (Unwidened(figure) is { } other)
            {
                figures.Add(other);
                plain = true;
            }
            else return null;
        }

        return figures.SequenceEqual(sentence.Figures) ? sentence
            : new Sentence(plain ? Unwidened(sentence.Template) : InSteps(sentence.Template), figures.ToImmutable()) { BeginsParagraph = sentence.BeginsParagraph, Topic = sentence.Topic };
    }

    /// <summary>The words for plain limits: a reader of one sentence must know that they are narrower than the truth allows.</summary>
    private static string Unwidened(string template)
    {
        var said = template.Replace(", widened for clusters", ", not widened for clusters", StringComparison.Ordinal);
        return said != template ? said : template.Replace(" interval {", " interval, not widened for clusters, {", StringComparison.Ordinal);
    }

    /// <summary>The words for limits in coarse steps: they are wider than the data ask for.</summary>
    private static string InSteps(string template)
    {
        var said = template.Replace(", widened for clusters", ", widened for clusters in coarse steps", StringComparison.Ordinal);
        return said != template ? said : template.Replace(" interval {", " interval, in coarse steps, {", StringComparison.Ordinal);
    }

    private static bool Superlative(Sentence sentence) =>
        sentence.Template.Contains(" highest ", StringComparison.Ordinal) || sentence.Template.Contains(" lowest ", StringComparison.Ordinal);

    private FigureReference? Unwidened(FigureReference figure)
    {
        foreach (var (widened, plain) in new[] { (".widenedLower", ".lower"), (".widenedUpper", ".upper") })
        {
            if (!figure.Id.EndsWith(widened, StringComparison.Ordinal)) continue;
            var path = figure.Id[..^widened.Length] + plain;
            return Shows(path) && FindingPath.Owner(findings, path) is { } found && found.Property.GetValue(found.Owner) is double value
                ? new FigureReference(path, Cell.Number(value), figure.Unit)
                : null;
        }

        return null;
    }

    /// <summary>Whether a figure may be seen.</summary>
    /// <param name="path">Its path in findings.json.</param>
    /// <returns>True where it may; a path that leads nowhere may not.</returns>
    public bool Shows(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return Listed(path) ?? (FindingPath.Owner(findings, path) is { } figure && Shows(figure.Owner, figure.Property.Name));
    }

    /// <summary>Whether a figure may be seen.</summary>
    /// <param name="owner">The finding that has it.</param>
    /// <param name="property">Name of its property.</param>
    /// <returns>True where it may; one that belongs to no row of a table may not.</returns>
    public bool Shows(object owner, string property) =>
        owners.TryGetValue(owner, out var row) && cells.Keeps(row.Table, row.Row) && !cells.Hides(row.Table, row.Row, FindingPath.Underscored(property));

    /// <summary>What the lists say of a figure that stands in no table; null where they say nothing.</summary>
    /// <param name="path">Its path in findings.json.</param>
    /// <returns>Whether it may be seen, or null.</returns>
    public bool? Listed(string path) =>
        figures.TryGetValue(path, out var rule) ? !cells.Hides(rule, CountUnit.Program) : null;

    /// <summary>What stands in place of a limit that rests on finer counts: the limit in coarse steps.</summary>
    /// <param name="path">Its path in findings.json.</param>
    /// <returns>The limit; null where none may stand.</returns>
    public double? Coarse(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (FindingPath.Owner(findings, path) is not { } figure) return null;
        if (!figures.TryGetValue(path, out var rule)) return Coarse(figure.Owner, figure.Property.Name);
        var name = path[(path.LastIndexOf('.') + 1)..];
        return figure.Property.GetValue(figure.Owner) is double value ? cells.Coarse(rule, CountUnit.Program, name, new Row(_ => value.ToString("R", CultureInfo.InvariantCulture))) : null;
    }

    /// <summary>What stands in place of a limit that rests on finer counts: the limit in coarse steps.</summary>
    /// <param name="owner">The finding that has it.</param>
    /// <param name="property">Name of its property.</param>
    /// <returns>The limit; null where none may stand.</returns>
    [UnconditionalSuppressMessage("Trimming", "IL2075", Justification = FindingPath.KeptWhole)]
    public double? Coarse(object owner, string property)
    {
        if (!owners.TryGetValue(owner, out var row)) return null;
        var name = FindingPath.Underscored(property);
        // A part of a row may have other figures than the row: they are read from it by their own names.
        return owner.GetType().GetProperty(property)?.GetValue(owner) is double value
            ? cells.Coarse(row.Table, new Row(column => column == name ? value.ToString("R", CultureInfo.InvariantCulture) : row.Row[column]), name) : null;
    }

    /// <summary>Whether a finding is a row that may be released, or a part of one.</summary>
    /// <param name="owner">The finding.</param>
    /// <returns>True where it is; null where it is no row of a table.</returns>
    public bool? KeepsRow(object owner) => owners.TryGetValue(owner, out var row) ? cells.Keeps(row.Table, row.Row) : null;

    /// <summary>Whether any count of the whole program is hidden, so that a sentence without a figure may say too much.</summary>
    internal bool HidesProgramCounts => Model.Variables.Any(variable => variable.Hidden && variable.Unit == CountUnit.Program);

    private static bool HidesCount(ITable table)
    {
        for (var row = 0; row < table.RowCount; row++)
        {
            for (var column = 0; column < table.Columns.Length; column++)
            {
                if (table.Columns[column].Unit == Unit.Count && table.Columns[column].Name != "cluster_count" && table.CellAt(row, column).Kind == CellKind.Hidden) return true;
            }
        }

        return false;
    }

    // The rows of that table are made of these figures.
    private void OwnPredictiveValues()
    {
        var table = findings.PredictiveValue.Table;
        var names = Row.Names(table);
        for (var index = 0; index < table.RowCount; index++)
        {
            var row = Row.Of(table, names, index);
            if (row["basis"] == "observed-without-flagged-lots" && row["by"] == "program")
            {
                Own(findings.PredictiveValue.WithoutFlaggedLots, table.Id, row, 2);
                Own(findings.PredictiveValue.WithoutFlaggedLotsBounds, RunRules.Bounds, row, 2);
            }

            if (row["basis"] != "observed") continue;
            if (row["by"] == "program")
            {
                Own(findings.PredictiveValue.Observed, table.Id, row, 2);
                Own(findings.PredictiveValue.Bounds, RunRules.Bounds, row, 2);
            }

            foreach (var group in findings.PredictiveValue.Groups.Where(group => group.Basis == PredictiveValues.PredictiveValueBasis.Observed && LevelNames.Of(group.Grouping) == row["by"] && group.Level == row["level"]))
            {
                Own(group, table.Id, row, 0);
            }
        }
    }

    // A finding that stands in two tables answers for the one that comes first; what is inside a row is part of it.
    [UnconditionalSuppressMessage("Trimming", "IL2075", Justification = FindingPath.KeptWhole)]
    private void Own(object part, string table, Row row, int depth)
    {
        if (depth > 2 || !owners.TryAdd(part, (table, row))) return;
        foreach (var property in part.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance))
        {
            if (property.GetIndexParameters().Length > 0) continue;
            if (property.PropertyType == typeof(PredictiveValues.PredictiveValueBounds)) Own(property.GetValue(part)!, RunRules.Bounds, row, 2);
            else if (PartsOfRows.Contains(property.PropertyType) && property.GetValue(part) is { } inner) Own(inner, table, row, depth + 1);
        }
    }
}
