namespace ScreenStats.Counting.Rules;

/// <summary>
/// Shares of one value that do not come from runs carried out one by one. The limits are wide on purpose: each says with which
/// chance a site that does everything right is named.
/// </summary>
public static class SuspiciousShareRule
{
    /// <summary>Fewest runs with a time of day of a site that are judged by their minutes.</summary>
    public const int FewestTimes = 60;

    /// <summary>Fewest runs of a site that are judged by their operators.</summary>
    public const int FewestRunsOfOperators = 100;

    /// <summary>Fewest operators of a site that are judged.</summary>
    public const int FewestOperators = 3;

    /// <summary>Share of one operator that is suspicious.</summary>
    public const double OperatorShare = 0.95;

    /// <summary>Fewest runs of a site and day that are judged by their results.</summary>
    public const int FewestRunsOfDay = 10;

    /// <summary>Fewest runs of a site that are judged by the lack of negatives.</summary>
    public const int FewestRunsOfSite = 5;

    /// <summary>The minute of the hour on which more than half of the times fall.</summary>
    /// <remarks>
    /// False alarms: where people round to quarter hours a minute has a share of 1/4, and more than half of 60 times fall on one of
    /// the four with a chance below 4e-5; without rounding it is below 1e-36.
    /// </remarks>
    /// <param name="times">Times by minute of the hour, sixty counts that are not negative.</param>
    /// <returns>The minute from 0 to 59; null where there is none, or fewer than <see cref="FewestTimes"/> times.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There are not sixty counts.</exception>
    public static int? MinuteOfHour(ReadOnlySpan<long> times)
    {
        if (times.Length != 60) throw new ArgumentOutOfRangeException(nameof(times), times.Length, "An hour has sixty minutes.");
        long all = 0;
        var most = 0;
        for (var minute = 0; minute < times.Length; minute++)
        {
            all += times[minute];
            if (times[minute] > times[most]) most = minute;
        }

        return all >= FewestTimes && 2 * times[most] > all ? most : null;
    }

    /// <summary>True where one of several operators has nearly every run.</summary>
    /// <remarks>False alarms: where each of three operators takes runs by turns, one has 95 of 100 with a chance below 2e-38; a site at which one does nearly all is named rightly, and may be in order.</remarks>
    /// <param name="operators">Number of operators recorded.</param>
    /// <param name="most">Runs of the one with most.</param>
    /// <param name="runs">Runs with an operator.</param>
    /// <returns>Whether the share is suspicious.</returns>
    public static bool IsOneOperator(int operators, long most, long runs) =>
        operators >= FewestOperators && runs >= FewestRunsOfOperators && most >= OperatorShare * runs;

    /// <summary>True where all runs of a site and day have one result that is not negative.</summary>
    /// <remarks>False alarms: with a true share of 0.2 of that result, all of ten have it with a chance of 1e-7.</remarks>
    /// <param name="same">Runs with the result.</param>
    /// <param name="runs">Runs of the site and day.</param>
    /// <returns>Whether it is suspicious.</returns>
    public static bool IsOneResult(long same, long runs) => runs >= FewestRunsOfDay && same == runs;

    /// <summary>True where a site has runs but no negative one.</summary>
    /// <remarks>False alarms: with a true share of negatives of 0.8, five runs have none with a chance of 3.2e-4; in most programs the share is above 0.95, and the chance below 3.2e-7.</remarks>
    /// <param name="negatives">Negative runs.</param>
    /// <param name="runs">All runs.</param>
    /// <returns>Whether negatives are missing.</returns>
    public static bool HasNoNegatives(long negatives, long runs) => runs >= FewestRunsOfSite && negatives == 0;
}
