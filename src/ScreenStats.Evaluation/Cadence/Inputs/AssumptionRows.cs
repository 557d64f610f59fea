using System.Collections.Immutable;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence.Draws;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Cadence.Inputs;

/// <summary>The table of what the answer rests on.</summary>
internal static class AssumptionRows
{
    /// <summary>A row for each figure.</summary>
    /// <param name="known">The figures.</param>
    /// <param name="draws">Their draws.</param>
    /// <param name="incidence">The incidence with all that it rests on.</param>
    /// <param name="recent">That of the last days; null where it is not told.</param>
    /// <param name="growth">How infection would pass on without screening; null where it is stated or not known.</param>
    public static ImmutableArray<CadenceAssumption> Of(KnownFigures known, ParameterDraws draws, EstimateFinding incidence, CadenceRecent? recent, CadenceGrowth? growth)
    {
        var rows = ImmutableArray.CreateBuilder<CadenceAssumption>();
        foreach (var figure in known.All)
        {
            rows.Add(figure.Parameter == Parameter.Incidence && known.IncidenceFromCases ? Incidence(figure, incidence) : Row(figure, draws));
            if (figure.Parameter == Parameter.Incidence)
            {
                if (recent is not null) rows.Add(Derived("incidence-last-days", "infections per person-day in the last 28 days", Scaled(recent.PerHundredThousand), "per person-day", "cases of those days by their share of all screens, otherwise as the incidence: the answer does not rest on it, what comes may"));
                AddFound(rows, known.Inputs(draws, incidence));
            }

            if (figure.Parameter == Parameter.BroughtIn && growth is not null)
            {
                rows.Add(Derived("reproduction-without-screening", "infections that one case causes inside without screening", growth.Reproduction, "infections", growth.AllInside
                    ? "follows from what screening removes now, if all infections spread inside and their level holds itself"
                    : "follows from the share brought in and what screening removes now, if the level of infection holds itself"));
            }
        }

        if (known.Settings.Course is { Kind: CourseKind.ViralLoad })
        {
            rows.Add(new CadenceAssumption
            {
                Assumption = "viral-loads",
                Name = "how viral loads rise and fall",
                Value = null,
                ValueUndefined = "not one figure",
                Lower = null,
                Upper = null,
                Unit = "days and logarithms",
                Origin = CadenceOrigin.NotKnown,
                Source = "not stated; a published model of a fast respiratory infection: a load of a thousand on day 2.5 to 3.5, a peak of ten million to a hundred billion at most 3 days later, below a million again 4 to 9 days after it, or after symptoms, which come within 3 days of the peak (Larremore and others, 2021, Sci Adv 7:eabd5393, from memory)",
                Method = null,
            });
        }

        rows.Add(Plain("people", "people screened", known.People, "people", known.Settings.People is not null, "people with a counted run"));
        rows.Add(Plain("days", "days looked at", known.Settings.Days, "days", stated: true, "a quarter unless the program file says otherwise"));
        rows.Add(new CadenceAssumption
        {
            Assumption = "worthwhile",
            Name = "infectious days that 1,000 more screens must remove",
            Value = known.Settings.Worthwhile,
            ValueUndefined = known.Settings.Worthwhile is null ? "not stated" : null,
            Lower = null,
            Upper = null,
            Unit = "days per 1,000 screens",
            Origin = known.Settings.Worthwhile is null ? CadenceOrigin.NotKnown : CadenceOrigin.Stated,
            Source = known.Settings.Worthwhile is null ? "no option is chosen; the steps are given" : StatedFigures.Source("", known.Settings.Source, exact: false),
            Method = known.Settings.Worthwhile is null ? null : MethodNames.Stated,
        });
        return rows.ToImmutable();
    }

    private static CadenceAssumption Row(KnownFigure figure, ParameterDraws draws)
    {
        var (id, name, unit) = ParameterWords.Of(figure.Parameter);
        var turned = figure.Parameter == Parameter.FalsePositiveRate;
        var ends = figure.Figure is null ? null : draws.Ends(figure.Parameter);
        return new CadenceAssumption
        {
            Assumption = id,
            Name = name,
            Value = turned ? 1 - figure.Figure?.Centre : figure.Figure?.Centre,
            ValueUndefined = figure.Figure is null ? "not known" : null,
            Lower = turned ? 1 - ends?.Upper : ends?.Lower,
            Upper = turned ? 1 - ends?.Lower : ends?.Upper,
            Unit = unit,
            Origin = figure.Origin,
            Source = figure.Source,
            Method = figure.Figure is null ? null : figure.Method,
        };
    }

    private static CadenceAssumption Incidence(KnownFigure figure, EstimateFinding incidence)
    {
        var (id, name, unit) = ParameterWords.Of(Parameter.Incidence);
        return new CadenceAssumption
        {
            Assumption = id,
            Name = name,
            Value = incidence.Estimate,
            ValueUndefined = incidence.EstimateUndefined,
            Lower = incidence.Lower,
            Upper = incidence.Upper,
            Unit = unit,
            Origin = incidence.Estimate is null ? CadenceOrigin.NotKnown : CadenceOrigin.Data,
            Source = incidence.Estimate is null ? incidence.EstimateUndefined! : figure.Source,
            Method = incidence.Estimate is null ? null : CadenceNotes.Incidence,
        };
    }

    private static void AddFound(ImmutableArray<CadenceAssumption>.Builder rows, CadenceInputs inputs)
    {
        var found = inputs.FoundPerPersonDay;
        rows.Add(new CadenceAssumption
        {
            Assumption = "found-per-person-day",
            Name = "cases found per person-day",
            Value = found.Estimate,
            ValueUndefined = found.EstimateUndefined,
            Lower = found.Lower,
            Upper = found.Upper,
            Unit = "per person-day",
            Origin = found.Estimate is null ? CadenceOrigin.NotKnown : CadenceOrigin.Data,
            Source = found.Estimate is null ? found.EstimateUndefined! : "cases by person-days between the first screen and the last of each person: the incidence is at least about this",
            Method = found.Method,
        });
    }

    private static EstimateFinding Scaled(EstimateFinding rate) => rate with { Estimate = rate.Estimate / Outcomes.IncidenceRanges.Per, Lower = rate.Lower / Outcomes.IncidenceRanges.Per, Upper = rate.Upper / Outcomes.IncidenceRanges.Per };

    private static CadenceAssumption Derived(string id, string name, EstimateFinding figure, string unit, string source) => new()
    {
        Assumption = id,
        Name = name,
        Value = figure.Estimate,
        ValueUndefined = figure.EstimateUndefined,
        Lower = figure.Lower,
        Upper = figure.Upper,
        Unit = unit,
        Origin = CadenceOrigin.Data,
        Source = source,
        Method = figure.Method,
    };

    private static CadenceAssumption Plain(string id, string name, double value, string unit, bool stated, string otherwise) => new()
    {
        Assumption = id,
        Name = name,
        Value = value,
        ValueUndefined = null,
        Lower = null,
        Upper = null,
        Unit = unit,
        Origin = stated ? CadenceOrigin.Stated : CadenceOrigin.Data,
        Source = stated && id == "people" ? "program file" : otherwise,
        Method = stated ? MethodNames.Stated : CadenceNotes.Adherence,
    };
}
