using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Tests.Cadence;

namespace ScreenStats.Evaluation.Tests.Worth;

/// <summary>One sentence says how the verdict and the answer to how often go together.</summary>
public class WorthRelationTests
{
    [Fact]
    public void It_names_what_is_judged_what_is_chosen_by_days_and_what_gains_most_by_money()
    {
        var kinds = new HashSet<string>();
        // What the steps to weekly and to twice-weekly remove: a rule between the two chooses the first of them, which is the plan.
        var steps = Of(1, 10_000).Cadence.Steps.Where(step => step.Leads).Select(step => step.PerThousandScreens.Estimate!.Value).ToList();
        foreach (var worthwhile in (double[])[0.001, (steps[0] + steps[1]) / 2, 100_000])
        {
            foreach (var value in (double[])[1, 10_000, 1_000_000])
            {
                var findings = Of(worthwhile, value);
                var (judged, chosen, best) = (findings.Worth.Judged!.Option, findings.Cadence.Options.Single(option => option.IsChosen).Option, findings.Worth.Best!.Option);
                var sentence = Sentence(findings);
                var kind = chosen == judged ? "the same" : best == chosen ? "money agrees" : "money differs";
                kinds.Add(kind);
                sentence.Should().Be(kind switch
                {
                    "the same" => $"How often to screen is answered with \"{chosen}\" too, {ByDays}.",
                    "money agrees" => $"Judged here is \"{judged}\", the plan; how often to screen is answered with \"{chosen}\", {ByDays}: by money that option gains most too.",
                    _ => $"Judged here is \"{judged}\", the plan; how often to screen is answered with \"{chosen}\", {ByDays}: by money \"{best}\" gains most, so the two measures differ, and it is for the program to say which one counts.",
                });
            }
        }

        kinds.Should().HaveCount(3);
    }

    [Fact]
    public void Without_a_plan_what_is_judged_is_said_to_be_nearest_to_what_was_done() =>
        Sentence(Of(100_000, 10_000, planned: false)).Should().Contain("the way nearest to what was done");

    [Fact]
    public void Without_a_measure_of_how_often_there_is_no_such_sentence() =>
        Of(null, 10_000).Worth.Text().Should().NotContain("ow often to screen is answered");

    [Fact]
    public void Without_a_value_nothing_is_said_of_money() =>
        Sentence(Of(100_000, null)).Should().EndWith(ByDays + ".");

    private const string ByDays = "judged by infectious days for each 1,000 screens and not by money";

    private static string Sentence(Findings findings) => findings.Worth.Sentences.Select(sentence => sentence.Text).Single(text => text.Contains("ow often to screen is answered", StringComparison.Ordinal));

    private static Findings Of(double? worthwhile, double? value, bool planned = true)
    {
        var cadence = WorthSketch.Cadence with { Worthwhile = worthwhile, Planned = planned ? WorthSketch.Cadence.Planned : null };
        var costs = WorthSketch.Exact with { InfectionAverted = value is { } some ? new Counting.Programs.Cadence.StatedRange(some) : null, InfectiousDay = null };
        return Evaluator.Evaluate(CadenceSketch.Program(), new ProgramSettings { Cadence = cadence, Costs = costs, Policy = new PolicySettings { IsolationDays = 7 } });
    }
}
