using System.Collections.Immutable;
using ScreenStats.Evaluation.Cadence.Inputs;
using ScreenStats.Evaluation.Cadence.Outcomes;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth.Options;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Evaluation.Worth.Turns;

/// <summary>How much infection there was in all data and in their last days, with the option that gains most for so much: what comes may be like these and not like the average.</summary>
internal static class PeriodRows
{
    public static ImmutableArray<WorthPeriod> Of(CostModel model, OptionTable options, IncidenceNets? nets, ImmutableArray<WorthRung> ladder)
    {
        var (known, outcomes) = (model.Work.Known, model.Work.Outcomes);
        if (nets is null || ladder.IsEmpty || options.Judged is not { IsKnown: true } judged || !known.IncidenceFromCases || known.Data.Cases == 0) return [];
        var rows = ImmutableArray.CreateBuilder<WorthPeriod>();
        Add("all-days", known.Data.Recent.SpanDays, known.Data.Cases, Scaled(outcomes.Incidence, 1));
        foreach (var recent in new[] { known.Data.Quarter, known.Data.Recent })
        {
            if (recent.IsPart) Add(FormattableString.Invariant($"last-{recent.Length}-days"), recent.Length, recent.Cases, Scaled(IncidenceRanges.Rate(outcomes, known, recent), IncidenceRanges.Per));
        }

        return rows.Count > 1 ? rows.ToImmutable() : [];

        void Add(string period, int days, long cases, EstimateFinding weekly)
        {
            if (weekly.Estimate is not { } here) return;
            var (rung, low, high) = (At(here)!, At(weekly.Lower), At(weekly.Upper));
            rows.Add(new WorthPeriod
            {
                Period = period,
                Days = days,
                Cases = cases,
                WeeklyIncidence = weekly,
                Option = rung.Option,
                Confirmation = rung.Confirmation,
                OptionAtLower = low?.Option,
                ConfirmationAtLower = low?.Confirmation,
                OptionAtUpper = high?.Option,
                ConfirmationAtUpper = high?.Confirmation,
                NetBenefit = nets.At(here / IncidenceNets.Weekly(1)!.Value)(judged.Choice),
            });
        }

        WorthRung? At(double? weekly) => weekly is { } some ? ladder.Last(rung => rung.From <= some) : null;
    }

    private static EstimateFinding Scaled(EstimateFinding rate, double per) => rate with
    {
        Estimate = IncidenceNets.Weekly(rate.Estimate / per),
        Lower = IncidenceNets.Weekly(rate.Lower / per),
        Upper = IncidenceNets.Weekly(rate.Upper / per),
    };
}
