using System.Collections.Immutable;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Inputs;
using ScreenStats.Evaluation.Cadence.Options;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Evaluation.Cadence.Outcomes;

/// <summary>At which incidence the option to choose changes, and where the last days of the data lie.</summary>
internal sealed class IncidenceRanges
{
    public const double Per = 100_000;

    // Looked at from one in a million to one in twenty people a day, at steps of a half more, then halved between two that differ.
    private const double Least = 1e-6;
    private const double Most = 0.05;
    private const double Step = 1.5;
    private const double Near = 1 + 1e-6;

    private readonly OutcomeDraws outcomes;
    private readonly Choice choice;
    private readonly Func<double, Func<ScreeningOption, double>>? removed;

    public IncidenceRanges(OutcomeDraws outcomes, Choice choice, KnownFigures known, ParameterDraws draws)
    {
        (this.outcomes, this.choice) = (outcomes, choice);
        if (choice.Chosen is not null) removed = outcomes.DaysRemoved();
        Recent = Last(known, draws);
        var ranges = removed is null ? [] : Found();
        var here = outcomes.Incidence.Estimate * Per;
        var last = Recent?.PerHundredThousand.Estimate;
        Ranges = [.. ranges.Select((range, index) => new CadenceIncidenceRange(
            ranges.FindIndex(other => other.Option == range.Option) == index ? range.Option.Name : FormattableString.Invariant($"{range.Option.Name}|{index + 1}"),
            range.Option.Name, range.From, range.To, Holds(range, here), Holds(range, last)))];

        static bool Holds((ScreeningOption Option, double From, double? To) range, double? at) => at >= range.From && (range.To is not { } to || at < to);
    }

    /// <summary>The options from the least incidence to the most; empty where none is chosen.</summary>
    public ImmutableArray<CadenceIncidenceRange> Ranges { get; }

    /// <summary>The last days; null where the incidence is not from cases, or the data are too short to compare.</summary>
    public CadenceRecent? Recent { get; }

    /// <summary>Infections per <see cref="Per"/> person-days in the last days of the data: their screens are taken to find as much as those of all days.</summary>
    public static EstimateFinding Rate(OutcomeDraws outcomes, KnownFigures known, RecentFigures recent)
    {
        var share = (double)recent.Screens / recent.AllScreens;
        var (exposure, drawn) = outcomes.Exposure;
        var cases = known.Infections(recent.Cases);
        var stream = new ParameterStream(known.Settings.Seed, nameof(CadenceRecent) + (recent.Length == RecentFigures.Days ? "" : FormattableString.Invariant($"{recent.Length}")));
        return outcomes.Figure(
            Math.Min(Per, Per * cases.Centre / (exposure * share)), Array.ConvertAll(drawn, worth => worth > 0 ? Math.Min(Per, Per * cases.Draw!(stream) / (worth * share)) : double.NaN), "not known", CadenceNotes.Turns);
    }

    private ScreeningOption At(double incidence)
    {
        var days = removed!(incidence);
        return choice.At((option, measure, basis) => measure == CadenceMeasure.InfectiousDaysRemoved ? days(option) : outcomes.Centre(option, measure, basis), outcomes.LeadingBasis)!;
    }

    private List<(ScreeningOption Option, double From, double? To)> Found()
    {
        var changes = new List<(double At, ScreeningOption Option)>();
        var (before, option) = (Least, At(Least));
        var first = option;
        while (before < Most)
        {
            var (next, there) = (before * Step, At(before * Step));
            Between(before, option, next, there);
            (before, option) = (next, there);
        }

        return [.. changes.Prepend((At: 0.0, Option: first)).Select((change, index) => (change.Option, change.At * Per, index < changes.Count ? changes[index].At * Per : (double?)null))];

        void Between(double low, ScreeningOption atLow, double high, ScreeningOption atHigh)
        {
            if (atLow == atHigh) return;
            var middle = Math.Sqrt(low * high);
            if (high / low < Near)
            {
                changes.Add((middle, atHigh));
                return;
            }

            var here = At(middle);
            Between(low, atLow, middle, here);
            Between(middle, here, high, atHigh);
        }
    }

    private CadenceRecent? Last(KnownFigures known, ParameterDraws draws)
    {
        var recent = known.Data.Recent;
        if (!known.IncidenceFromCases || known.Data.Cases == 0 || !recent.CanCompare || outcomes.Incidence.Estimate is not { } all) return null;
        var share = (double)recent.Screens / recent.AllScreens;
        var rate = Rate(outcomes, known, recent);
        string? Option(double? at) => at is { } some && removed is not null ? At(some / Per).Name : null;
        var whole = outcomes.Incidence;
        return new CadenceRecent
        {
            Days = RecentFigures.Days,
            Cases = recent.Cases,
            AllCases = known.Data.Cases,
            Pending = recent.Pending,
            PerHundredThousand = rate,
            AllPerHundredThousand = whole with { Estimate = all * Per, Lower = whole.Lower * Per, Upper = whole.Upper * Per },
            Ratio = Ratio(recent.Cases, known.Data.Cases, share, known.Confidence),
            Option = Option(rate.Estimate),
            OptionAtLower = Option(rate.Lower),
            OptionAtUpper = Option(rate.Upper),
        };
    }

    // Given the cases of both, those of the last days are binomial: p = r s / (r s + 1 - s), s the share of screens.
    private static EstimateFinding Ratio(long cases, long all, double share, double confidence)
    {
        if (cases == all) return EstimateFinding.Undefined("there was no case before");
        var interval = ProportionInterval.ClopperPearson(cases, all, confidence);
        double? Of(double? part) => part is < 1 and var p ? p / (1 - p) * (1 - share) / share : null;
        return new EstimateFinding(Of((double)cases / all), null, Of(interval.Lower), Of(interval.Upper), CadenceNotes.Turns, confidence);
    }
}
