namespace ScreenStats.Statistics.Cadence.Courses.Quadrature;

/// <summary>The lognormal days from infection to symptoms: how many have them by an age, and integrals of that.</summary>
internal readonly struct OnsetLaw
{
    private readonly double median;
    private readonly double location;
    private readonly double spread;
    private readonly double mean;
    private readonly double meanSquare;

    public OnsetLaw(SymptomOnset symptoms)
    {
        median = symptoms.MedianDays;
        location = Math.Log(median);
        spread = symptoms.LogSpread;
        mean = median * Math.Exp(spread * spread / 2);
        meanSquare = median * median * Math.Exp(2 * spread * spread);
    }

    /// <summary>Days over which the law changes most quickly; 0 where all begin on one day.</summary>
    public double Scale => median * spread * Math.Exp(-spread);

    /// <summary>Of people who get symptoms, the share that has them by an age.</summary>
    public double Share(double age) => Share(age, Score(age));

    /// <summary>The same where the <see cref="Score"/> of the age is known.</summary>
    public double Share(double age, double z) => age <= 0 ? 0 : spread == 0 ? (age >= median ? 1 : 0) : NormalTable.Below(z);

    /// <summary>How many standard deviations the logarithm of an age lies above its mean.</summary>
    public double Score(double age) => age <= 0 || spread == 0 ? 0 : (Math.Log(age) - location) / spread;

    /// <summary>The mean of min(onset - age, days) where the onset comes after the age, and 0 where it does not: the integral of F(x + days) - F(x) from the age on.</summary>
    public double DaysBefore(double days, double age) => DaysBefore(days, age, Score(age), Share(age));

    /// <summary>The same where score and share of the age are known.</summary>
    public double DaysBefore(double days, double age, double z, double below) => Math.Max(0, days - (Antiderivative(1, 0, age + days) - Antiderivative(1, 0, age, z, below)));

    /// <summary>An antiderivative of (a + b x) times <see cref="Share(double)"/> at an age x; 0 at 0.</summary>
    public double Antiderivative(double a, double b, double age)
    {
        var z = Score(age);
        return Antiderivative(a, b, age, z, Share(age, z));
    }

    /// <summary>The same where score and share of the age are known.</summary>
    public double Antiderivative(double a, double b, double age, double z, double below)
    {
        if (age <= 0) return 0;
        if (spread == 0) return age <= median ? 0 : (a * (age - median)) + (b * ((age * age) - (median * median)) / 2);

        // The integral of F is x F minus the part of the mean that lies below x, and likewise for x F with the mean square.
        var sum = a * ((age * below) - (mean * NormalTable.Below(z - spread)));
        return b == 0 ? sum : sum + (b * ((age * age * below) - (meanSquare * NormalTable.Below(z - (2 * spread)))) / 2);
    }
}
