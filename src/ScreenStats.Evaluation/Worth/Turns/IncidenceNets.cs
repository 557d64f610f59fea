using System.Collections.Immutable;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Options;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Worth.Options;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Evaluation.Worth.Turns;

/// <summary>Net benefit of every option for any number of infections, all else at the centre. Pools are made as large as suits the number.</summary>
internal sealed class IncidenceNets
{
    public const double DaysPerWeek = 7;
    public const double PerThousand = 1_000;

    // Infections per person-day that are looked at: from 7 in a million a week to one person in ten, or ten times the upper limit of the incidence as it is;
    // but not where more than half of all would be immune from the days before, unless there are so many now: no workplace goes on like that.
    public const double Least = 1e-6;
    private const double UsualMost = 0.015;
    private const double BeyondUpper = 10;
    private const double MostImmune = 0.5;

    private readonly CostModel model;
    private readonly double value;
    private readonly Func<double, Func<ScreeningOption, CadenceMeasure, CadenceBasis, double>> outcomes;

    private IncidenceNets(CostModel model, OptionTable options, double value)
    {
        this.model = model;
        this.value = value;
        outcomes = model.Work.Outcomes.AtIncidence();
        var present = model.Work.Outcomes.Incidence.Upper ?? model.Work.Outcomes.Incidence.Estimate ?? 0;
        var wide = Math.Min(1, Math.Max(UsualMost, BeyondUpper * present));
        Most = model.Work.Draws.Centre[Parameter.ImmunityDays] is > 0 and var immune ? Math.Min(wide, Math.Max(present, MostImmune / immune)) : wide;
        var known = options.Known.Where(option => !option.Choice.Option.IsNone).Select(option => option.Choice).ToList();
        // A pool that saves nothing at the centre may save something where fewer positives are real.
        foreach (var choice in known.ToList())
        {
            var pooled = choice with { Confirmation = WorthConfirmation.Pooled };
            if (choice.Confirmation == WorthConfirmation.Confirmed && model.Settings.LargestPool is > 1 && !known.Contains(pooled)) known.Insert(known.IndexOf(choice) + 1, pooled);
        }

        Ways = [.. known.GroupBy(choice => (choice.Option, choice.Confirmation == WorthConfirmation.Without)).Select(way => way.ToImmutableArray())];
    }

    /// <summary>Everything but no screening: each way of screening with a confirmatory test, one by one or in pools, and each without, the least frequent way first.</summary>
    public ImmutableArray<ImmutableArray<OptionChoice>> Ways { get; }

    /// <summary>The most infections per person-day that are looked at.</summary>
    public double Most { get; }

    /// <summary>The incidence as it is, per 1,000 people in a week, with its limits.</summary>
    public (double? Value, string? Undefined, double? Lower, double? Upper) Present
    {
        get
        {
            var incidence = model.Work.Outcomes.Incidence;
            var exact = !(incidence.Upper > incidence.Lower);
            return (Weekly(incidence.Estimate), incidence.EstimateUndefined, exact ? null : Weekly(incidence.Lower), exact ? null : Weekly(incidence.Upper));
        }
    }

    /// <summary>The nets; null where no effect is valued, no option known, or none of them follows the incidence.</summary>
    public static IncidenceNets? Of(CostModel model, OptionTable options)
    {
        if (model.Value is not { } value || !options.Known.Any(option => !option.Choice.Option.IsNone)) return null;
        var nets = new IncidenceNets(model, options, value.Value);
        return nets.Ways.All(way => way.All(nets.Follows)) ? nets : null;
    }

    /// <summary>Whether the net benefit is known from the least to the most infections looked at.</summary>
    public bool Follows(OptionChoice choice) => double.IsFinite(At(Least)(choice)) && double.IsFinite(At(Most)(choice));

    /// <summary>Infections per person-day as they are spoken of: per 1,000 people in a week.</summary>
    public static double? Weekly(double? daily) => daily * DaysPerWeek * PerThousand;

    /// <summary>Net benefits at so many infections per person-day.</summary>
    public Func<OptionChoice, double> At(double incidence)
    {
        var of = outcomes(incidence);
        var (centre, basis) = (model.Work.Draws.Centre, model.Work.Outcomes.LeadingBasis);
        return choice =>
        {
            if (choice.Option.IsNone) return 0;
            var pool = choice.Confirmation == WorthConfirmation.Pooled ? model.PoolSize(measure => of(choice.Option, measure, basis)) : 1;
            var sum = model.At(choice, of, centre, model.Prices.Centre, pool);
            return (value * sum.Effect) - sum.Cost;
        };
    }
}
