namespace ScreenStats.Statistics.Cadence.Courses.Quadrature;

/// <summary>What is summed over the first positive screens of an infection, by their age: each figure is linear in their density.</summary>
internal sealed class YieldSums
{
    private readonly AgeCurve spread;
    private readonly SpreadTail? tail;
    private readonly OnsetLaw onset;
    private readonly double isolating;
    private readonly bool symptoms;
    private readonly double delay;
    private readonly double? days;

    public YieldSums(InfectionCourse course, double delay, double? days)
    {
        spread = course.Spread;
        this.delay = delay;
        this.days = days;
        if (course.Symptoms is not { Share: > 0 } known) return;
        symptoms = true;
        onset = new OnsetLaw(known);
        isolating = known.Share * known.IsolationShare;
        if (isolating > 0) tail = new SpreadTail(spread, known);
    }

    /// <summary>Whether a figure depends on when symptoms begin, so that nothing is a polynomial of the age.</summary>
    public bool Smooth => symptoms;

    public double Found { get; private set; }

    public double Screens { get; private set; }

    public double Alone { get; private set; }

    public double Beyond { get; private set; }

    public double Before { get; private set; }

    public double BeforeOnset { get; private set; }

    /// <summary>The chance that a screen finds the infection where symptoms do not isolate the person.</summary>
    public double FoundAlone { get; private set; }

    /// <summary>Days from isolation by a screen to symptoms that isolate the person as well, as far as isolation lasts.</summary>
    public double Earlier { get; private set; }

    /// <summary>Adds screens of one age.</summary>
    /// <param name="age">Their age, the infection's.</param>
    /// <param name="piece">The piece of the infectiousness that holds age and delay together.</param>
    /// <param name="screens">The weight of those taken by people not found so far.</param>
    /// <param name="found">The weight of those that find the infection.</param>
    public void Add(double age, int piece, double screens, double found)
    {
        var alone = spread.Tail(piece, age + delay);
        Alone += found * alone;
        FoundAlone += found;
        if (piece < 0) Before += found;
        if (!symptoms)
        {
            Screens += screens;
            Found += found;
            return;
        }

        var score = onset.Score(age + delay);
        var share = onset.Share(age + delay, score);
        BeforeOnset += found * (1 - share);
        if (tail is null)
        {
            Screens += screens;
            Found += found;
            return;
        }

        var free = 1 - (isolating * onset.Share(age));
        Screens += screens * free;
        Found += found * free;
        Beyond += found * tail.From(piece, age + delay, score, share);
        if (days is { } lasting) Earlier += found * onset.DaysBefore(lasting, age + delay, score, share);
    }

    public CourseOutcome Outcome()
    {
        var total = spread.Total;
        var bySymptoms = tail is null || total <= 0 ? 0 : 1 - (tail.Total / total);
        var byScreening = total <= 0 ? 0 : Alone / total;
        var both = tail is null || total <= 0 ? byScreening : bySymptoms + (Beyond / total);
        var free = tail is null ? 1 : 1 - (isolating * onset.Share(spread.First));
        return new CourseOutcome(
            CourseOutcome.ByQuadrature, Found, Screens, total, both, bySymptoms, byScreening, 1 - free + (free * Before), symptoms ? BeforeOnset : null,
            days is { } lasting ? (((1 - isolating) * FoundAlone * lasting) + (isolating * (lasting + Earlier)), isolating * lasting) : null);
    }
}
