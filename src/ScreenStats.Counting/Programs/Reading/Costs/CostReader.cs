using System.Text.Json;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Counting.Programs.Costs;
using ScreenStats.Counting.Programs.Reading.Cadence;

namespace ScreenStats.Counting.Programs.Reading.Costs;

/// <summary>Reads what is stated for the question whether screening is worth it.</summary>
internal static class CostReader
{
    private const double MostMoney = 1e12;
    private const double MostMinutes = 1440;

    /// <summary>Reads the section; rules may name the options of the section on how often to screen.</summary>
    public static CostSettings Read(JsonItem? item, CadenceSettings cadence, ProgramProblems problems)
    {
        var section = new ProgramSection(item, CostKeys.Costs, "key", problems);
        StatedRange? Money(string name) => RangeReader.Number(section, name, 0, MostMoney, "an amount of money, 0 or more, such as 4.5", problems);
        if (section.Find("screen") is not null)
        {
            foreach (var part in CostKeys.PartsOfScreen)
            {
                if (section.Find(part) is { } stray)
                    problems.WrongValue(stray, "left out where \"screen\" states the cost of a screen as one figure; or leave out \"screen\"");
            }
        }

        return new CostSettings
        {
            Currency = section.Text("currency"),
            PriceYear = section.Whole("priceYear", 1900, 2200, "a year of four figures, such as 2024"),
            Perspective = section.Text("perspective"),
            DiscountRate = section.Share("discountRate"),
            Kit = Money("kit"),
            OperatorMinutes = RangeReader.Number(section, "operatorMinutes", 0, MostMinutes, "a number of minutes from 0 to 1440", problems),
            OperatorHour = Money("operatorHour"),
            Supervision = Money("supervision"),
            Waste = Money("waste"),
            Screen = Money("screen"),
            ConfirmatoryTest = Money("confirmatoryTest"),
            IsolationDay = Money("isolationDay"),
            WorkingDay = Money("workingDay"),
            Illness = Money("illness"),
            Outbreak = Money("outbreak"),
            InfectionAverted = Money("infectionAverted"),
            InfectiousDay = Money("infectiousDay"),
            LargestPool = Pooling(section.Find("pooling"), problems),
            Rules = FrequencyRuleReader.Read(section, cadence, problems),
            Report = Report(section.Find("report"), problems),
            Source = section.Text("source") ?? "",
        };
    }

    private static int? Pooling(JsonItem? item, ProgramProblems problems)
    {
        if (item is null) return null;
        var section = new ProgramSection(item, CostKeys.Pooling, "key", problems);
        if (item.Kind != JsonValueKind.Object) return null;
        if (section.Find("most") is null)
        {
            problems.WrongValue(item, "given with \"most\", the most specimens of which the laboratory makes one pool; leave \"pooling\" out where it allows none");
            return null;
        }

        return section.Whole("most", 2, 1000, "a whole number of specimens in a pool, from 2 to 1000");
    }

    private static EvaluationStatements Report(JsonItem? item, ProgramProblems problems)
    {
        var section = new ProgramSection(item, CostKeys.Report, "key", problems);
        return new EvaluationStatements
        {
            Background = section.Text("background"),
            AnalysisPlan = section.Text("analysisPlan"),
            Population = section.Text("population"),
            Setting = section.Text("setting"),
            Comparators = section.Text("comparators"),
            Horizon = section.Text("horizon"),
            Discounting = section.Text("discounting"),
            Outcomes = section.Text("outcomes"),
            Valuation = section.Text("valuation"),
            Resources = section.Text("resources"),
            Heterogeneity = section.Text("heterogeneity"),
            Distribution = section.Text("distribution"),
            Engagement = section.Text("engagement"),
            EngagementEffect = section.Text("engagementEffect"),
            Limitations = section.Text("limitations"),
            Funding = section.Text("funding"),
            Conflicts = section.Text("conflicts"),
        };
    }
}
