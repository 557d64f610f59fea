namespace ScreenStats.Statistics.Standardisation;

/// <summary>The rate a site would have if its strata were as large as those of the standard population.</summary>
/// <param name="Events">Events in the strata of the standard population.</param>
/// <param name="Population">What they are counted over.</param>
/// <param name="CrudeRate">Events over population, unadjusted; null without a population.</param>
/// <param name="Rate">The standardised rate with its limits; undefined with its reason.</param>
/// <param name="Variance">Its variance; null where undefined.</param>
/// <param name="LargestWeight">The most that one event adds to the rate; null where undefined.</param>
/// <param name="Method">How the limits were computed.</param>
/// <param name="FewEvents">Whether fewer than 10 events were counted: health statistics then give no standardised rate.</param>
public sealed record DirectRate(long Events, double Population, double? CrudeRate, Estimate Rate, double? Variance, double? LargestWeight, DirectMethod Method, bool FewEvents);
