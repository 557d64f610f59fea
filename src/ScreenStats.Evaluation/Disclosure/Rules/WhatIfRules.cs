using ScreenStats.Evaluation.Disclosure.Counts;
using static ScreenStats.Evaluation.Disclosure.Rules.RuleColumns;

namespace ScreenStats.Evaluation.Disclosure.Rules;

/// <summary>Tables of what would be: where small counts are hidden, no figure of the data is in them (<see cref="WhatIf.WhatIfFindings.OnlyStated"/>).</summary>
internal static class WhatIfRules
{
    public static IEnumerable<TableRule> All()
    {
        yield return new("what-if-start", Every, _ => CountUnit.Program, Always(Names(
            ColumnRule.Free, "key", "name", "measure", "share", "days", "value", "lower", "upper", "method", "confidence", "source", "from_data", "at")));
        yield return new("what-if-predictive-values", Every, _ => CountUnit.Program, Always(Names(
            ColumnRule.Free, "key", "prevalence", "sensitivity", "specificity", "true_positives", "false_positives", "missed", "positive_predictive_value", "negative_predictive_value")));
        yield return new("what-if-interval", Every, _ => CountUnit.Program, Always(Names(
            ColumnRule.Free, "key", "days_between_screens", "sensitivity", "specificity", "detection", "removed", "caught", "screens", "false_alarms")));
    }
}
