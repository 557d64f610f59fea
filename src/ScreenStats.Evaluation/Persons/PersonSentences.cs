using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Persons;

internal static class PersonSentences
{
    private const string Path = "persons.program";

    public static ImmutableArray<Sentence> Of(PersonFindings findings, bool hasConfirmatory)
    {
        var program = findings.Program;
        if (program.Tested == 0) return [new Sentence("Nobody was tested.")];
        var tested = new Sentence(
            $"{{0}} {Figure.Plural(program.Tested, "person was", "people were")} tested at least once; {{1}} of them were positive at least once.",
            Figure.Count(Path + ".tested", program.Tested), Figure.Count(Path + ".everPositive", program.EverPositive));
        if (!hasConfirmatory) return [tested, new Sentence("Without a confirmatory export no case can be counted.")];
        return
        [
            tested,
            new Sentence(
                $"{{0}} {Figure.Plural(program.Cases, "case was", "cases were")} found: {{1}} through a positive run and {{2}} through an inconclusive one. A case is a person's " +
                "first confirmed run of an episode.",
                Figure.Count(Path + ".cases", program.Cases), Figure.Count(Path + ".casesThroughPositive", program.CasesThroughPositive),
                Figure.Count(Path + ".casesThroughInconclusive", program.CasesThroughInconclusive)),
            new Sentence(
                $"That is {{0}} cases per 1,000 person-weeks ({{1}} to {{2}}, {Figure.Percent(program.CaseShare.Confidence)} confidence) over {{3}} person-weeks with " +
                $"at least one run{ShareWords.Few(program.CaseShare)}. It counts the cases that screening found, not all there were.",
                Figure.Number(Path + ".casesPerThousandPersonWeeks", program.CasesPerThousandPersonWeeks, Unit.PerThousand, program.CasesPerThousandPersonWeeksUndefined),
                Figure.Number(Path + ".casesPerThousandLower", program.CasesPerThousandLower, Unit.PerThousand, program.CasesPerThousandPersonWeeksUndefined),
                Figure.Number(Path + ".casesPerThousandUpper", program.CasesPerThousandUpper, Unit.PerThousand, program.CasesPerThousandPersonWeeksUndefined),
                Figure.Count(Path + ".personWeeks", program.PersonWeeks)),
        ];
    }
}
