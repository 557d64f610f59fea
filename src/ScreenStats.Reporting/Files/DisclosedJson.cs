using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization.Metadata;
using ScreenStats.Counting.Cubes;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Answers;
using ScreenStats.Evaluation.Disclosure;
using ScreenStats.Evaluation.PredictiveValues;
using ScreenStats.Evaluation.Yield;

namespace ScreenStats.Reporting.Files;

/// <summary>
/// findings.json where small counts are hidden: the same names; a hidden figure is null beside a <c>…Hidden</c> that is true. Words and
/// names stay by a list, numbers by the disclosure stage; what neither knows is hidden.
/// </summary>
internal static class DisclosedJson
{
    private const string Undefined = "Undefined";

    private static readonly HashSet<Type> FreeWords =
    [
        typeof(Grouping), typeof(Flag), typeof(YieldMeasure), typeof(PredictiveValueBasis), typeof(PredictiveValueMeasure), typeof(ReportPeriod), typeof(Reader), typeof(Outcome),
        typeof(global::ScreenStats.Counting.Cubes.StratumOrigin), typeof(Evaluation.Accuracy.AccuracyBasis), typeof(DelayKind), typeof(PersonMeasure),
        typeof(Evaluation.Trends.TrendMeasure), typeof(Evaluation.Trends.TrendBasis), typeof(Evaluation.Trends.Growth.GrowthSegment), typeof(Evaluation.Trends.Changes.TrendChangeKind),
        typeof(Evaluation.Comparisons.Rows.ComparisonMeasure), typeof(Evaluation.Comparisons.Rows.ComparisonBasis), typeof(Evaluation.WhatIf.Grids.GridScale),
        typeof(Evaluation.Changes.Rows.ChangeMeasure), typeof(Evaluation.Changes.Rows.FlagChange), typeof(Evaluation.Changes.Differences.SpanRelation),
    ];

    private static readonly HashSet<string> FreeTexts = new(StringComparer.Ordinal)
    {
        "id", "key", "by", "level", "lot", "site", "device", "name", "label", "export", "entry", "outcome", "measure", "basis", "grouping", "method", "question", "inOneSentence", "text", "condition",
        "source", "prevalenceSource", "assumption", "column", "kind", "expected", "reason", "stratum", "with", "first", "second", "adjustment",
        "period", "weekday", "within", "what", "sites", "communityMeasure", "communitySource", "stage", "comesFrom", "earlierText", "laterText",
    };

    private static readonly HashSet<string> FreeLists = new(StringComparer.Ordinal) { "answers.questions", "answers.nextSteps", "cautions.items", "answers.questions.readers", "predictiveValue.flaggedLots", "kits.flaggedLots", "comparison.leftOutLots",
        "whatIf.positive.grids", "whatIf.positive.grids.axes", "whatIf.positive.grids.axes.nodes", "whatIf.positive.grids.values",
        "whatIf.interval.grids", "whatIf.interval.grids.axes", "whatIf.interval.grids.axes.nodes", "whatIf.interval.grids.values",
        "kits.devices", "kits.contrasts", "kits.devices.lots", "truePrevalence.program.devices", "expected.devices.lots",
        "changes.answers",
    };

    /// <summary>The text.</summary>
    public static string Of(Findings findings, ReleaseDisclosure disclosure)
    {
        var root = JsonSerializer.SerializeToNode(findings, JsonText.Members<Findings>(JsonText.Layout))!.AsObject();
        Object(root, findings, "", disclosure);
        root.Add("disclosure", JsonSerializer.SerializeToNode(disclosure, JsonText.Members<ReleaseDisclosure>(JsonText.Layout)));
        return root.ToJsonString(JsonText.Layout) + "\n";
    }

    /// <summary>Whether a member of some name and type is hidden where the disclosure stage does not show it: numbers, and words that no list knows.</summary>
    internal static bool MayHide(string name, Type declared)
    {
        var type = Nullable.GetUnderlyingType(declared) ?? declared;
        if (type == typeof(string)) return !FreeTexts.Contains(name) && !name.EndsWith(Undefined, StringComparison.Ordinal);
        return type.IsEnum ? !FreeWords.Contains(type) : type.IsPrimitive || type == typeof(decimal);
    }

    private static void Object(JsonObject node, object value, string path, ReleaseDisclosure disclosure)
    {
        bool Shows(string name, string property) => disclosure.Listed(path + name) ?? disclosure.Shows(value, property);
        foreach (var property in JsonText.Layout.GetTypeInfo(value.GetType()).Properties)
        {
            if (property.Get is null || !node.TryGetPropertyValue(property.Name, out var child)) continue;
            var name = property.Name;
            var type = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
            if (name.EndsWith(Undefined, StringComparison.Ordinal))
            {
                var of = name[..^Undefined.Length];
                if (!Shows(of, char.ToUpperInvariant(of[0]) + of[1..])) node.Remove(name);
            }
            else if (MayHide(name, type))
            {
                if (Shows(name, Own(property))) continue;
                if ((disclosure.Coarse(value, Own(property)) ?? (path.Contains('[', StringComparison.Ordinal) ? null : disclosure.Coarse(path + name))) is { } limit)
                {
                    node[name] = limit;
                    continue;
                }

                node[name] = null;
                node[name + "Hidden"] = true;
            }
            else if (type == typeof(DateTime))
            {
                // The minute may be that of one person's specimen.
                node[name] = ((DateTime?)property.Get(value))?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
            }
            else if (child is JsonArray array)
            {
                Array(array, (IEnumerable)property.Get(value)!, path + name, disclosure);
            }
            else if (child is JsonObject inner)
            {
                Object(inner, property.Get(value)!, path + name + ".", disclosure);
            }
        }
    }

    private static void Array(JsonArray array, IEnumerable values, string path, ReleaseDisclosure disclosure)
    {
        var items = values.Cast<object>().ToList();
        for (var index = items.Count - 1; index >= 0; index--)
        {
            if (!(disclosure.KeepsRow(items[index]) ?? FreeLists.Contains(path))) array.RemoveAt(index);
            else if (array[index] is JsonObject inner) Object(inner, items[index], path + ".", disclosure);
        }
    }

    private static string Own(JsonPropertyInfo property) => (property.AttributeProvider as MemberInfo)?.Name ?? property.Name;
}
