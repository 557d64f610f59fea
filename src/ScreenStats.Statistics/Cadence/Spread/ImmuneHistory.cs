using ScreenStats.Statistics.Numerics;

namespace ScreenStats.Statistics.Cadence.Spread;

/// <summary>The days before the first one, where what is known of imports and of reproduction was measured while those infected in these days were immune.</summary>
/// <remarks>
/// <para>With e infections a day and immunity of D days, S = N - D e people can be infected at the end of each day. For a level that holds itself the rates of
/// <see cref="RenewalSpread"/>, which are among people none of whom is immune, are those measured times k = N / e ln(1 + e / S): N / S for the immune, and
/// ln(1 + x) / x with x = e / S for those infected earlier on the same day. With imports b e k and reproduction (1 - b) k every day then has e infections again.</para>
/// <para>At least <see cref="LeastSusceptible"/> of the people are taken as not immune: where D e is more than the rest, e is taken as the rest divided by D.
/// No immunity stated: nobody was immune earlier, e as it is and k = 1.</para>
/// <para>Source: derived, as the fixed point of the renewal equation.</para>
/// </remarks>
/// <param name="EarlierPerDay">Infections on each day before the first one.</param>
/// <param name="Scale">Imports and reproduction among people none of whom is immune, divided by those measured; 1 or more.</param>
public readonly record struct ImmuneHistory(double EarlierPerDay, double Scale)
{
    /// <summary>The least share of the people who can be infected at the end of a day.</summary>
    public const double LeastSusceptible = 0.05;

    /// <summary>The days before the first one.</summary>
    /// <param name="people">People at the workplace, from 1 to 1e15.</param>
    /// <param name="earlierPerDay">Infections a day, measured, 0 or more.</param>
    /// <param name="immunityDays">Days after which someone infected can be infected again, from 1 to <see cref="RenewalSpread.MostDays"/>; null: nobody was immune earlier.</param>
    /// <returns>The infections of a day and the scale, of relative error below 1e-12.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public static ImmuneHistory Of(double people, double earlierPerDay, double? immunityDays)
    {
        if (!(people is >= 1 and <= 1e15)) throw new ArgumentOutOfRangeException(nameof(people), people, "The people must be a number from 1 to 1e15.");
        Guard.Amount(earlierPerDay);
        if (immunityDays is not (null or (>= 1 and <= RenewalSpread.MostDays)))
            throw new ArgumentOutOfRangeException(nameof(immunityDays), immunityDays, $"The days of immunity must be a number from 1 to {RenewalSpread.MostDays}.");
        if (immunityDays is not { } days || earlierPerDay == 0) return new ImmuneHistory(earlierPerDay, 1);
        var each = Math.Min(earlierPerDay, (1 - LeastSusceptible) * people / days);
        var susceptible = Math.Max(LeastSusceptible * people, people - (days * each));
        var ratio = each / susceptible;
        return new ImmuneHistory(each, people / susceptible * (ratio < 1e-12 ? 1 : Precise.LogOnePlus(ratio) / ratio));
    }
}
