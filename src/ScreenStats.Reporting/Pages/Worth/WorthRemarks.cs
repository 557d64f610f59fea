using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth;
using ScreenStats.Evaluation.Worth.Rows;
using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Pages.Worth;

/// <summary>What is said before tables, from what stands in them.</summary>
internal static class WorthRemarks
{
    /// <summary>Why no screening may be the best in most draws and yet not the one to choose; empty where it is not so.</summary>
    public static Caption Choice(WorthFindings found)
    {
        var option = found.Options.FirstOrDefault(one => one.IsNone);
        var none = option?.BestShare;
        var most = found.Options.Where(one => !one.IsNone).Max(one => one.BestShare);
        if (found.Best is not { IsNone: false } || none is not { } share || most is not { } other || share <= other || share >= 1) return "";
        return new Sentence("No screening is the best in {0} of the draws, which is more than any one way of screening; in all others some way of screening is, and the ways share these among them. A choice goes by what is gained, not by how often an option is the best.",
            new FigureReference(FigurePath.Row("worth.options", option!.Key) + ".bestShare", Cell.Number(share), Evaluation.Model.Unit.Proportion));
    }

    /// <summary>Which figures may turn the verdict within their own limits; empty where no limits are known.</summary>
    public static Caption Turns(WorthFindings found)
    {
        var limited = found.Turns.Where(turn => !WorthWording.IsHalfFalse(turn) && turn is { Lower: not null, Upper: not null } && (turn.BreakEven is not null || turn.Pays is WorthPays.Always or WorthPays.Never)).ToList();
        if (found.Judged is null || limited.Count == 0) return "";
        var open = limited.Where(IsOpen).Select(turn => turn.Name).ToList();
        // What is assumed has no break-even here: it turns the verdict where the net benefit changes its sign over the range.
        open.AddRange(found.Swings.Where(swing => swing.Figure != "incidence" && swing.Low < 0 != swing.High < 0).Select(swing => swing.Name).Where(name => !open.Contains(name)));
        if (open.Count == 0) return "No figure alone turns the verdict within its limits.";
        var list = open.Count == 1 ? open[0] : string.Join(", ", open.Take(open.Count - 1)) + " or " + open[^1];
        return $"Within its limits one figure alone may turn the verdict: {list}.";
    }

    private static bool IsOpen(WorthTurn turn) => turn is { Lower: { } lower, Upper: { } upper, BreakEven: { } at } && lower < at && upper > at;
}
