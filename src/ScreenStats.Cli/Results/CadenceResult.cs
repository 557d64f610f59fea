using ScreenStats.Statistics;
using ScreenStats.Statistics.Cadence.Intervals;

namespace ScreenStats.Cli.Results;

/// <summary>What <c>cadence</c> answers: what was asked, and one option for each interval.</summary>
internal sealed record CadenceResult(
    Figure Sensitivity, Figure Specificity, IReadOnlyList<double> Window, IReadOnlyList<double>? Infectious, double Delay, Figure Incidence, Figure People,
    IReadOnlyList<CadenceItem> Options)
{
    public static CadenceResult Of(CadenceQuestion asked, IEnumerable<CadenceOption> options) => new(
        Given(asked.Sensitivity, UndefinedReason.SensitivityUnknown), Given(asked.Specificity, UndefinedReason.SpecificityUnknown),
        [asked.DetectableFrom, asked.DetectableTo], asked.Infectious is { } infectious ? [infectious.Lower, infectious.Upper] : null, asked.DelayDays,
        Given(asked.Incidence, UndefinedReason.IncidenceUnknown), Given(asked.People, UndefinedReason.PeopleUnknown), [.. options.Select(CadenceItem.Of)]);

    private static Figure Given(double? value, UndefinedReason reason) => Figure.Of(value, reason.Describe());
}
