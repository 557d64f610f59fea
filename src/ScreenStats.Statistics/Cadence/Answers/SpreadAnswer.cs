using System.Collections.Immutable;
using ScreenStats.Statistics.Cadence.Spread;

namespace ScreenStats.Statistics.Cadence.Answers;

/// <summary>How an infection spreads inside under a way of screening.</summary>
/// <remarks>
/// Infections by one case fall with what is kept of its infectiousness: R (1 - removed)/(1 - removed by symptoms alone), where R is without screening.
/// Chances are for one introduction. Expected infections start from the present ones: as many a day as the incidence says, before the first day; where days of immunity are
/// stated those are immune, and imports and R are taken as they are with them at work (<see cref="ImmuneHistory"/>).
/// </remarks>
public sealed record SpreadAnswer
{
    /// <summary>The size of an outbreak that is asked for.</summary>
    public const int OutbreakSize = 5;

    private SpreadAnswer(Estimate reproduction, Estimate outbreak, Estimate extinction, Estimate infections, Estimate inside)
    {
        Reproduction = reproduction;
        Outbreak = outbreak;
        Extinction = extinction;
        Infections = infections;
        InfectionsInside = inside;
    }

    /// <summary>Infections inside by one case.</summary>
    public Estimate Reproduction { get; }

    /// <summary>The chance that one introduction leads to <see cref="OutbreakSize"/> or more cases, itself included.</summary>
    public Estimate Outbreak { get; }

    /// <summary>The chance that what one introduction starts dies out by itself, in a workplace without limit.</summary>
    public Estimate Extinction { get; }

    /// <summary>Expected infections over the days, brought in or passed on inside.</summary>
    public Estimate Infections { get; }

    /// <summary>Those of them passed on inside.</summary>
    public Estimate InfectionsInside { get; }

    /// <summary>The answer for a share of infectiousness that is removed.</summary>
    /// <param name="spread">What is known of the spread.</param>
    /// <param name="removed">The share removed by screens and symptoms.</param>
    /// <param name="bySymptoms">The share removed by symptoms alone.</param>
    /// <param name="infectiousnessByDay">How infectious a case is on day 1, 2, … after its infection; empty where not known.</param>
    /// <param name="incidence">New infections per person-day; null where not known.</param>
    /// <param name="people">People; null where not known.</param>
    /// <param name="withoutProfile">Why there is no infectiousness by day, where there is none.</param>
    /// <returns>The answer.</returns>
    internal static SpreadAnswer Of(
        SpreadQuestion spread, Estimate removed, Estimate bySymptoms, ImmutableArray<double> infectiousnessByDay, double? incidence, long? people,
        UndefinedReason withoutProfile)
    {
        if (removed.Value is not { } all) return Undefined(removed.Reason ?? withoutProfile);
        var kept = 1 - (bySymptoms.Value ?? 0);
        if (kept <= 0 && spread.Reproduction > 0) return Undefined(UndefinedReason.NoSpread);
        var reproduction = kept <= 0 ? 0 : spread.Reproduction * Math.Clamp((1 - all) / kept, 0, 1);
        var process = new OffspringProcess(reproduction, spread.Dispersion);
        var totals = incidence is { } rate && people is { } many && !infectiousnessByDay.IsEmpty
            ? Totals(spread, reproduction, infectiousnessByDay, rate, many)
            : (RenewalTotals?)null;
        var missing = incidence is null ? UndefinedReason.IncidenceUnknown : people is null ? UndefinedReason.PeopleUnknown : withoutProfile;
        return new SpreadAnswer(
            Estimate.Point(reproduction, OffspringProcess.Method),
            people is { } workplace
                ? Estimate.Point(SiteOutbreak.AtLeast(process, (int)Math.Min(workplace, SiteOutbreak.MostPeopleOfAll), OutbreakSize), SiteOutbreak.Method)
                : Estimate.Point(process.AtLeast(OutbreakSize), OffspringProcess.Method),
            Estimate.Point(process.ExtinctionProbability(), OffspringProcess.Method),
            totals is { } sum ? Estimate.Point(sum.Imported + sum.Inside, RenewalSpread.Method) : Estimate.Undefined(missing),
            totals is { } inner ? Estimate.Point(inner.Inside, RenewalSpread.Method) : Estimate.Undefined(missing));
    }

    private static RenewalTotals Totals(SpreadQuestion spread, double reproduction, ImmutableArray<double> infectiousnessByDay, double incidence, long people)
    {
        var history = ImmuneHistory.Of(people, incidence * people, spread.ImmunityDays);
        return RenewalSpread.Totals(
            people, history.EarlierPerDay * spread.BroughtIn * history.Scale, reproduction * history.Scale, infectiousnessByDay.AsSpan(), spread.Days, history.EarlierPerDay,
            spread.ImmunityDays, earlierImmune: true);
    }

    /// <summary>The figures of an answer in one order, for limits of all of them.</summary>
    internal const int Count = 5;

    internal IEnumerable<double?> Values => [Reproduction.Value, Outbreak.Value, Extinction.Value, Infections.Value, InfectionsInside.Value];

    internal SpreadAnswer With(ImmutableArray<Interval?> limits, int first, double confidence) => new(
        OptionFigures.Limited(Reproduction, limits[first], confidence), OptionFigures.Limited(Outbreak, limits[first + 1], confidence),
        OptionFigures.Limited(Extinction, limits[first + 2], confidence), OptionFigures.Limited(Infections, limits[first + 3], confidence),
        OptionFigures.Limited(InfectionsInside, limits[first + 4], confidence));

    private static SpreadAnswer Undefined(UndefinedReason reason)
    {
        var none = Estimate.Undefined(reason);
        return new SpreadAnswer(none, none, none, none, none);
    }
}
