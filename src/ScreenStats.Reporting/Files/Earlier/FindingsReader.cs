using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Changes;
using ScreenStats.Evaluation.Changes.Rows;
using ScreenStats.Evaluation.Changes.Snapshots;
using ScreenStats.Reporting.Files.Schema;

namespace ScreenStats.Reporting.Files.Earlier;

/// <summary>Reads from the findings.json of an earlier evaluation what can be compared with another. Knows the format, and no text of the file reaches a message.</summary>
internal static class FindingsReader
{
    /// <summary>What can be compared.</summary>
    /// <param name="json">The bytes of the file.</param>
    /// <param name="name">How the file is called in messages.</param>
    /// <exception cref="NotFindingsException">The bytes are no findings.json of ours, or of a newer format.</exception>
    public static EvaluationSnapshot Read(ReadOnlyMemory<byte> json, string name)
    {
        try
        {
            using var document = JsonDocument.Parse(json.Span.StartsWith("\uFEFF"u8) ? json[3..] : json);
            var root = new FindingsNode(document.RootElement);
            if (root.Text("$schema") != FindingsFile.SchemaName || root.Whole("format") is not { } format)
                throw new NotFindingsException($"{name} is JSON, but no findings.json of ours; name the findings.json of an earlier evaluation, or its report folder.");
            if (format > FindingsFile.Format)
            {
                throw new NotFindingsException(string.Create(
                    CultureInfo.InvariantCulture, $"{name} has format {format}, and this version knows formats up to {FindingsFile.Format}; use the version that made it, or a newer one."));
            }

            if (format < 1) throw new NotFindingsException($"{name} has a format that never was; name the findings.json of an earlier evaluation as it was written.");
            return Snapshot(root);
        }
        catch (JsonException fault)
        {
            var line = fault.LineNumber is { } number ? string.Create(CultureInfo.InvariantCulture, $" (line {number + 1})") : "";
            throw new NotFindingsException($"{name} is not valid JSON{line}; name the findings.json of an earlier evaluation as it was written.", fault);
        }
        catch (InvalidOperationException fault)
        {
            // A text with half a character in it, or bytes that are no UTF-8.
            throw new NotFindingsException($"{name} has text in it that is none (bytes that are no UTF-8, or half a character); name the findings.json of an earlier evaluation as it was written.", fault);
        }
        catch (FindingsNode.MissingException missing)
        {
            throw new NotFindingsException($"{name} lacks {missing.Member}, or has something else there; name the findings.json of an earlier evaluation as it was written.", missing);
        }
    }

    private static EvaluationSnapshot Snapshot(FindingsNode root)
    {
        var span = root.Required("span");
        var suppressed = root["disclosure"] is { } disclosure ? disclosure.Count("suppressBelow") ?? throw new FindingsNode.MissingException("disclosure.suppressBelow") : 0;
        var (first, last) = (span.Day("firstDay"), span.Day("lastDay"));
        if (first is null != last is null || first > last) throw new FindingsNode.MissingException("a span whose first day is not after its last");
        var (followUp, devices) = (root.Required("followUp"), root.Required("expected").Items("devices"));
        return new EvaluationSnapshot
        {
            FirstDay = first,
            LastDay = last,
            SuppressBelow = suppressed,
            Shares = [.. SnapshotShares.Of(root)],
            Figures = [Figure(root, ChangeMeasure.Sensitivity, "sensitivity"), Figure(root, ChangeMeasure.Specificity, "specificity")],
            Periods = suppressed > 0 ? [] : Periods(root.Required("trends")),
            Levels = [.. Levels(root, Grouping.Site, "sites", "site"), .. Levels(root, Grouping.Lot, "lots", "lot")],
            Settings = SnapshotSettings.Of(
                root.Required("positivity").Required("program").Share("confidence"), span.Text("period") ?? "", span.True("hasConfirmatory"), followUp.Number("confirmWithinHours") ?? 0,
                span.True("reportingLagFromData") ? null : span.Number("reportingLagHours"), root.Required("yield").Whole("episodeDays") ?? 0, suppressed,
                devices.Select(device => (device.Text("device") ?? "", device["statedSensitivity"]?.Number("value"), device["statedSpecificity"]?.Number("value")))),
            Answers = [.. root.Required("answers").Items("questions").Select(answer => new SnapshotAnswer(answer.Text("id") ?? "", answer.Text("question") ?? "", answer.Text("text") ?? "")).Where(answer => answer.Id != "what-has-changed").DistinctBy(answer => answer.Id)],
        };
    }

    private static SnapshotFigure Figure(FindingsNode root, ChangeMeasure measure, string name)
    {
        var figure = root.Required("accuracy").Required(name);
        var (lower, upper, confidence) = (figure.Share("lower"), figure.Share("upper"), figure.Share("confidence"));
        if (lower > upper) throw new FindingsNode.MissingException("limits of which the lower is not above the upper");
        if (confidence is 0 or 1) throw new FindingsNode.MissingException("confidence");
        return new SnapshotFigure(measure, figure.Share("estimate"), figure.Text("estimateUndefined"), lower, upper, confidence);
    }

    private static IEnumerable<SnapshotLevel> Levels(FindingsNode root, Grouping by, string list, string name) => root.Items(list)
        .Select(level => new SnapshotLevel(by, level.Text(name) ?? throw new FindingsNode.MissingException($"{list}.{name}"), Flagged(level.Text("flag")))).DistinctBy(level => level.Level);

    private static Flag Flagged(string? word) => word switch
    {
        "" => Flag.None,
        "refuted" => Flag.Refuted,
        "invalid" => Flag.Invalid,
        "refuted-and-invalid" => Flag.Refuted | Flag.Invalid,
        _ => throw new FindingsNode.MissingException("a flag"),
    };

    private static ImmutableArray<SnapshotPeriod> Periods(FindingsNode trends)
    {
        var rows = trends.Items("points").Where(row => row.Text("basis") == "all" && row.Text("by") == "program").ToList();
        Dictionary<DateOnly, FindingsNode> Of(string measure) => rows.Where(row => row.Text("measure") == measure && row.Day("periodStart") is not null).DistinctBy(row => row.Day("periodStart")).ToDictionary(row => row.Day("periodStart")!.Value);
        var (unusable, confirmed) = (Of("invalid-runs"), Of("predictive-value"));
        return
        [
            .. Of("positivity").OrderBy(row => row.Key).Select(row =>
            {
                var (runs, value) = (unusable.GetValueOrDefault(row.Key), confirmed.GetValueOrDefault(row.Key));
                var end = row.Value.Day("periodEnd");
                if (end is null || end < row.Key) throw new FindingsNode.MissingException("trends.points.periodEnd");
                return new SnapshotPeriod(
                    row.Key, end.Value, Counted(row.Value, "trials"), Counted(row.Value, "events"),
                    Counted(runs, "trials"), Counted(runs, "events"), Counted(value, "trials"), Counted(value, "events"));
            }),
        ];
    }

    private static long Counted(FindingsNode? row, string name) => row is null ? 0 : row.Count(name) ?? throw new FindingsNode.MissingException("trends.points." + name);
}
