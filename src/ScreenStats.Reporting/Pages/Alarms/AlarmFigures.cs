using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Alarms;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Pages.Alarms;

/// <summary>Pictures of the evidence against lots over time.</summary>
internal static class AlarmFigures
{
    private const int MostLots = 2;

    /// <summary>One picture for each of the first lots that had an alarm of their own; none where small counts are hidden.</summary>
    public static ImmutableArray<Chart> Of(Findings findings) => findings.Disclosure is not null ? [] :
    [
        .. findings.Alarms.Evidence.GroupBy(point => point.Lot, StringComparer.Ordinal).Select(lot => (Points: lot.ToImmutableArray(), Alarm: lot.First(point => point.Evidence >= point.Threshold).Day))
            .OrderBy(lot => lot.Alarm).Take(MostLots).Select((lot, index) => Of(lot.Points, lot.Alarm, index, findings.Alarms.Tables[2].Id)),
    ];

    private static Chart Of(ImmutableArray<LotEvidencePoint> points, DateOnly alarm, int index, string table)
    {
        var lot = ChartText.Name(points[0].Lot, 40);
        var threshold = points[0].Threshold;
        var (from, to) = (points[0].Day.DayNumber, points[^1].Day.DayNumber);
        var pad = Math.Max(3, (to - from) * 0.03);
        var top = Math.Ceiling(points.Max(point => point.Evidence)) + 1;
        var low = Math.Min(-1, Math.Floor(points.Min(point => point.Evidence)));

        // The evidence stays where it is until more is reported: steps, not slopes.
        var steps = ImmutableArray.CreateBuilder<(double X, double Y)>();
        steps.Add((from - pad, 0));
        foreach (var point in points)
        {
            steps.Add((point.Day.DayNumber, steps[^1].Y));
            steps.Add((point.Day.DayNumber, point.Evidence));
        }

        steps.Add((to + pad, steps[^1].Y));
        var raised = points.First(point => point.Day == alarm);
        var left = alarm.DayNumber > (from + to) / 2.0;
        ImmutableArray<Mark> marks =
        [
            new RuleMark(threshold, Upright: false),
            new LineMark(steps.ToImmutable(), Tone.Main, 2.5),
            new DotMark(alarm.DayNumber, raised.Evidence, Tone.Alert),
            new LabelMark(alarm.DayNumber, raised.Evidence, "alarm " + alarm.ToString("d MMM yyyy", CultureInfo.InvariantCulture), left ? LabelSide.AboveLeft : LabelSide.BelowRight, Tone.Alert, Strong: true),
            new LabelMark(left ? from - pad : to + pad, threshold, "dashed: alarm from here", left ? LabelSide.AboveRight : LabelSide.AboveLeft, Tone.Quiet),
        ];
        return new Chart(
            string.Create(CultureInfo.InvariantCulture, $"alarm-evidence-{index + 1}"), $"Evidence against lot {lot}, day by day",
            (Caption)"From the day on which the line reaches the dashed one there was an alarm. How many times as likely the refuted positives reported so far are if the lot is worse than those beside it." +
            new Sentence("Equal heights are equal multiples; below {0} it speaks for the lot.", Caption.Drawn(1)) + "Line: at the end of each day. Dot: the first day on which it reached the dashed line.",
            string.Create(CultureInfo.InvariantCulture,
                $"The evidence against lot {lot} begins at 1 and reaches the alarm on {alarm:yyyy-MM-dd}, when {raised.Found} of {raised.Among} refuted positives had fallen on it and {raised.Expected:0.0} were expected."),
            table,
            new Axis("", from - pad, to + pad, Ticks.Days(points[0].Day, points[^1].Day), Lines: false),
            new Axis("times as likely", low, top, Powers(low, top)),
            marks, 320);
    }

    private const string Superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹";

    // At most seven labelled places.
    private static ImmutableArray<Tick> Powers(double low, double top)
    {
        var every = Math.Max(1, (int)Math.Ceiling((top - low) / 7));
        var ticks = ImmutableArray.CreateBuilder<Tick>();
        for (var power = (int)low; power <= top; power++)
        {
            if (power % every != 0) continue;
            ticks.Add(new Tick(power, power switch
            {
                0 => "1",
                < 0 => "1/" + Math.Pow(10, -power).ToString("#,0", CultureInfo.InvariantCulture),
                <= 6 => Math.Pow(10, power).ToString("#,0", CultureInfo.InvariantCulture),
                _ => "10" + string.Concat(power.ToString(CultureInfo.InvariantCulture).Select(digit => Superscripts[digit - '0'])),
            }));
        }

        return ticks.ToImmutable();
    }
}
