using System.Globalization;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth;
using ScreenStats.Evaluation.Worth.Rows;
using ScreenStats.Reporting.Pages.Cadence;

namespace ScreenStats.Reporting.Pages.Worth;

/// <summary>Words and figures of whether it is worth it, as they are read on the page and in pictures.</summary>
internal static class WorthWording
{
    private const string NoCurrency = "units of money";

    /// <summary>What all money is in.</summary>
    public static string Currency(WorthFindings found) => found.Currency.StartsWith(NoCurrency, StringComparison.Ordinal) ? NoCurrency : found.Currency;

    /// <summary>What is gained, of one: "infection averted".</summary>
    public static string One(WorthFindings found) => found.Effect == WorthEffect.InfectionsAverted ? "infection averted" : "infectious day removed";

    /// <summary>What is gained, of many.</summary>
    public static string Many(WorthFindings found) => found.Effect == WorthEffect.InfectionsAverted ? "infections averted" : "infectious days removed";

    /// <summary>For whom and how long options are compared.</summary>
    public static string Scope(WorthFindings found) => FormattableString.Invariant($"{found.People:N0} {(found.People == 1 ? "person" : "people")} over {found.Days:N0} {(found.Days == 1 ? "day" : "days")}");

    /// <summary>The same as a sentence, to go on in a caption.</summary>
    public static Sentence ScopeOf(WorthFindings found, string before, string after) => new(
        before + " {0} " + (found.People == 1 ? "person" : "people") + " over {1} " + (found.Days == 1 ? "day" : "days") + after,
        new FigureReference("worth.people", Cell.Count(found.People), Evaluation.Model.Unit.Count), new FigureReference("worth.days", Cell.Count(found.Days), Evaluation.Model.Unit.Count));

    /// <summary>An option with what follows a positive: the usual confirmatory test goes without saying.</summary>
    public static string Name(string option, WorthConfirmation confirmation) => (option == CadenceOptionFinding.AsDone ? "as it was done" : option) + confirmation switch
    {
        WorthConfirmation.Pooled => ", pooled",
        WorthConfirmation.Without => ", unconfirmed",
        _ => "",
    };

    /// <summary>The same by the key of the option.</summary>
    public static string Name(WorthFindings found, string key) => found.Options.FirstOrDefault(option => option.Key == key) is { } option ? Name(option.Option, option.Confirmation) : key;

    /// <summary>What is said of an option; empty for nothing.</summary>
    public static string Remark(Findings findings, WorthOption option)
    {
        var judged = findings.Cadence.Options.Any(one => one.IsPlanned && one.Option == option.Option) ? "planned" : "judged";
        return option switch
        {
            { IsJudged: true, IsBest: true } => judged + " and best",
            { IsJudged: true } => judged,
            { IsBest: true } => "best",
            { IsAsDone: true, Standing: not WorthStanding.NoOption } => "no option to choose",
            _ => "",
        };
    }

    /// <summary>The options that are spoken of: those of the usual kind, and all others that are on the frontier, judged or best.</summary>
    public static bool Leads(WorthOption option) =>
        option.Confirmation is WorthConfirmation.NotNeeded or WorthConfirmation.Confirmed || option.Standing == WorthStanding.OnFrontier || option.IsJudged || option.IsBest;

    /// <summary>Where an option stands.</summary>
    public static string Standing(WorthOption option) => option.Standing switch
    {
        WorthStanding.OnFrontier => "on the frontier",
        WorthStanding.Dominated => "dominated by " + Usual(option.DominatedBy),
        WorthStanding.ExtendedlyDominated => "dominated by a mix of " + Usual(option.DominatedBy),
        WorthStanding.SameAsEarlier => "the same as one before it",
        WorthStanding.NoOption => "no option to choose",
        _ => "not known",
    };

    /// <summary>What a figure of what screening did is called.</summary>
    public static string Measure(string measure) => measure switch
    {
        "total-cost" => "Cost in all",
        "cost-per-screen" => "Cost for each screen, all included",
        "cost-per-case" => "Cost for each case found",
        "screens-per-case" => "Screens for each case found",
        "screens-per-person" => "Screens of one person",
        "real-positives" => "Real positives, of those followed up",
        "days-lost" => "Working days lost to false alarms",
        "days-kept-out" => "Infectious days kept out of work",
        "days-kept-out-per-day-lost" => "Infectious days kept out for each working day lost",
        "cost-per-infectious-day" => "Spending for each infectious day removed",
        "cost-per-infection-averted" => "Spending for each infection averted",
        _ => CadenceViews.Capital(measure.Replace('-', ' ')),
    };

    /// <summary>Money without its currency.</summary>
    public static string Money(double amount) => Rounding.Print(Cell.Number(amount), Evaluation.Model.Unit.Ratio);

    /// <summary>A value of a break-even with its unit, where that is short.</summary>
    public static string Turn(WorthFindings found, double value, string unit) => unit == "share" ? Share(value)
        : unit.StartsWith("money", StringComparison.Ordinal) ? $"{Money(value)} {Currency(found)}" : Rounding.Print(Cell.Number(value), Evaluation.Model.Unit.Ratio);

    /// <summary>The name of a break-even with its unit, where that is long.</summary>
    public static string Turn(WorthTurn turn) => CadenceViews.Capital(turn.Name) + (turn.Unit == "share" || turn.Unit.StartsWith("money", StringComparison.Ordinal) ? "" : $" ({turn.Unit})");

    /// <summary>On which side of a break-even it pays.</summary>
    public static string Pays(WorthFindings found, WorthTurn turn)
    {
        var at = turn.BreakEven is { } value ? Turn(found, value, turn.Unit) : "";
        return (turn.Pays, IsHalfFalse(turn)) switch
        {
            (WorthPays.Above, true) => "most alarms are real above " + at,
            (WorthPays.Above, _) => "above " + at,
            (WorthPays.Below, _) => "below " + at,
            (WorthPays.Always, _) => "at every value",
            (WorthPays.Never, _) => "at none",
            (WorthPays.Between, _) when turn.OtherBreakEven is { } other && turn.BreakEven is { } one => $"between {Turn(found, Math.Min(one, other), turn.Unit)} and {Turn(found, Math.Max(one, other), turn.Unit)}",
            _ => turn.BreakEvenUndefined ?? "not known",
        };
    }

    /// <summary>The figure as it is, with its limits.</summary>
    public static string Present(WorthFindings found, WorthTurn turn)
    {
        if (turn.Present is not { } present) return turn.PresentUndefined ?? "not known";
        return Turn(found, present, turn.Unit) + (turn is { Lower: { } lower, Upper: { } upper } && lower < upper ? $" ({Bare(Turn(found, lower, turn.Unit))} to {Bare(Turn(found, upper, turn.Unit), keepsPerCent: true)})" : "");

        string Bare(string words, bool keepsPerCent = false) =>
            words.EndsWith(" %", StringComparison.Ordinal) && !keepsPerCent ? words[..^2] : words.Replace(" " + Currency(found), "", StringComparison.Ordinal);
    }

    /// <summary>What that means for the figure as it is, and whether its limits leave it open.</summary>
    public static string Now(WorthTurn turn)
    {
        if (turn.Pays is WorthPays.Always or WorthPays.Never) return turn.Pays == WorthPays.Always ? "pays" : "does not pay";
        if (turn is not { Present: { } present, BreakEven: { } at } || turn.Pays is not (WorthPays.Above or WorthPays.Below or WorthPays.Between)) return "";
        var pays = turn.Pays switch
        {
            WorthPays.Above => present > at,
            WorthPays.Below => present < at,
            _ => turn.OtherBreakEven is { } other && present > Math.Min(at, other) && present < Math.Max(at, other),
        };
        var open = turn is { Lower: { } lower, Upper: { } upper } && lower < at && upper > at;
        var words = IsHalfFalse(turn) ? pays ? "most are real" : "most are false" : pays ? "pays" : "does not pay";
        return words + (open ? ", but the limits hold both" : "");
    }

    /// <summary>An end of a figure's range, with its unit.</summary>
    public static string End(Findings findings, string figure, double value)
    {
        var found = findings.Worth;
        var unit = CadenceViews.UnitsOf(findings.Cadence)(figure);
        return unit.Length == 0 ? figure == "operator-minutes" ? Counted(value, "minute") : $"{Money(value)} {Currency(found)}"
            : unit == "per person-day" ? CadenceWording.Short(value, unit) + " in 100,000"
            : unit.StartsWith("days", StringComparison.Ordinal) ? CadenceWording.Value(value, unit) : CadenceWording.Short(value, unit);
    }

    /// <summary>A share that is known, as per cent, with its limits.</summary>
    public static string Share(EstimateFinding figure) =>
        Share(figure.Estimate!.Value) + (figure is { Lower: { } lower, Upper: { } upper } && lower < upper ? $" ({Share(lower).Replace(" %", "", StringComparison.Ordinal)} to {Share(upper)})" : "");

    /// <summary>A share as per cent.</summary>
    public static string Share(double share) => Rounding.Print(Cell.Number(share), Evaluation.Model.Unit.Proportion);

    /// <summary>Whether it is the prevalence below which half of the alarms are false.</summary>
    public static bool IsHalfFalse(WorthTurn turn) => turn.Figure == "half-false-prevalence";

    /// <summary>The usual confirmatory test goes without saying.</summary>
    private static string Usual(string options) => options.Replace(" with confirmatory tests", "", StringComparison.Ordinal);

    private static string Counted(double value, string what)
    {
        var number = value.ToString("#,0.##", CultureInfo.InvariantCulture);
        return $"{number} {what}{(number == "1" ? "" : "s")}";
    }
}
