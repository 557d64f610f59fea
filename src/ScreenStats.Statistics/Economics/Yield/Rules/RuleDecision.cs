using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Economics.Yield.Rules;

/// <summary>What a rule of frequency would have had in force in one period, and what it would have made of that period.</summary>
public sealed record RuleDecision
{
    internal RuleDecision(int period, ProportionEstimate yield, int inForce, int? band, int next, bool isSure, double screensPerPerson)
    {
        Period = period;
        Yield = yield;
        InForce = inForce;
        Band = band;
        Next = next;
        IsSure = isSure;
        ScreensPerPerson = screensPerPerson;
    }

    /// <summary>The place of the period in the list given, from 0.</summary>
    public int Period { get; }

    /// <summary>The period's yield with Wilson's limits.</summary>
    public ProportionEstimate Yield { get; }

    /// <summary>The band in force in this period, decided on the periods before.</summary>
    public int InForce { get; }

    /// <summary>The band that the yield lies in; null without screens.</summary>
    public int? Band { get; }

    /// <summary>The band in force from the next period on.</summary>
    public int Next { get; }

    /// <summary>Whether both limits of the yield lie in the same band, so that chance alone would hardly have changed the answer.</summary>
    public bool IsSure { get; }

    /// <summary>Screens of one person in this period under the band in force: days over days between screens.</summary>
    public double ScreensPerPerson { get; }
}
