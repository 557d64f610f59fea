using System.Collections.Immutable;
using ScreenStats.Evaluation.Clusters;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.IntervalCases;

/// <summary>The table of interval cases.</summary>
internal static class IntervalCaseTables
{
    public static Table<IntervalCaseFinding> Table(ImmutableArray<IntervalCaseFinding> rows) => new(
        "interval-cases",
        "Interval cases by days since the negative run",
        "Positive confirmatory specimens, taken for another reason than audit, of people whose latest run was negative. "
        + "Never part of sensitivity, specificity or negative predictive value. The share is the program's: cases found by screening, "
        + "of these and the interval cases of so many days or fewer.",
        [
            new("days_since_run", "Days since the negative run", Unit.Days, "Whole calendar days from the negative run to the specimen.", row => Cell.Count(row.DaysSinceRun)),
            new("specimens", "Specimens", Unit.Count, "Positive confirmatory specimens.", row => Cell.Count(row.Specimens)),
            new("cumulative", "Cumulative", Unit.Count, "Those of this many days or fewer.", row => Cell.Count(row.Cumulative)),
            .. ShareColumns.For<IntervalCaseFinding>(row => row.ProgramSensitivity),
        ],
        rows);
}
