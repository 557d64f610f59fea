using System.Collections.Immutable;
using System.Text.Json;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Counting.Programs.Costs;
using ScreenStats.Counting.Programs.Reading.Cadence;

namespace ScreenStats.Counting.Programs.Reading.Costs;

/// <summary>Reads how often people are to be screened by what screening last found.</summary>
internal static class FrequencyRuleReader
{
    private const string Expected = "a list in brackets, such as [{ \"option\": \"monthly\" }, { \"above\": 0.05, \"option\": \"weekly\" }]";

    public static ImmutableArray<FrequencyRuleSettings> Read(ProgramSection costs, CadenceSettings cadence, ProgramProblems problems)
    {
        var options = new OptionReader(problems);
        var known = cadence.Planned is { } planned && !cadence.Options.Contains(planned) ? cadence.Options.Add(planned) : cadence.Options;
        var rules = ImmutableArray.CreateBuilder<FrequencyRuleSettings>();
        var items = costs.List("rules", Expected);
        for (var place = 0; place < items.Length; place++)
        {
            var item = items[place];
            var section = new ProgramSection(item, CostKeys.Rule, "key", problems);
            if (item.Kind != JsonValueKind.Object) continue;
            if (section.Find("option") is not { } written)
            {
                problems.WrongValue(item, "given with \"option\", how often people are then screened");
                continue;
            }

            var option = options.Of(written, known);
            var above = Above(section, item, place == 0, problems);
            if (option is null || (place > 0 && above is null)) continue;
            if (rules.Count > 0 && !Follows(rules[^1], above, option, section, problems)) continue;
            rules.Add(new FrequencyRuleSettings(above, option));
        }

        return rules.ToImmutable();
    }

    /// <summary>The threshold of a line: none in the first, one in every other.</summary>
    private static double? Above(ProgramSection section, JsonItem item, bool first, ProgramProblems problems)
    {
        if (first)
        {
            if (section.Find("above") is { } stray) problems.WrongValue(stray, "left out: the first line holds from a positivity of 0 on");
            return null;
        }

        if (section.Find("above") is null)
        {
            problems.WrongValue(item, "given with \"above\", the positivity of the last period above which it holds, such as 0.05");
            return null;
        }

        if (section.Share("above") is not { } share) return null;
        if (share < 1) return share;
        problems.WrongValue(section.Find("above")!, "a positivity below 1, such as 0.05");
        return null;
    }

    private static bool Follows(FrequencyRuleSettings last, double? above, CadenceOptionSettings option, ProgramSection section, ProgramProblems problems)
    {
        if (last.Above is { } before && above <= before)
        {
            problems.WrongValue(section.Find("above")!, "higher than that of the line before");
            return false;
        }

        if (option.ScreensPerDay > last.Option.ScreensPerDay) return true;
        problems.WrongValue(section.Find("option")!, "more frequent than that of the line before");
        return false;
    }
}
