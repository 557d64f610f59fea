namespace ScreenStats.Statistics.Cadence.Spread;

/// <summary>A site and how many cases are brought into it.</summary>
public readonly record struct SiteIntroductions
{
    /// <summary>Makes a site.</summary>
    /// <param name="people">People at the site, 1 to <see cref="SiteOutbreak.MostPeopleOfAll"/>.</param>
    /// <param name="introductions">Cases brought in over the time looked at, on average, 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure outside its domain.</exception>
    public SiteIntroductions(int people, double introductions)
    {
        if (people is < 1 or > SiteOutbreak.MostPeopleOfAll) throw new ArgumentOutOfRangeException(nameof(people), people, "A site has from 1 person to a billion.");
        Guard.Amount(introductions);
        People = people;
        Introductions = introductions;
    }

    /// <summary>People at the site.</summary>
    public int People { get; }

    /// <summary>Cases brought in over the time looked at, on average.</summary>
    public double Introductions { get; }
}
