using ScreenStats.Statistics.Economics.Turning;

namespace ScreenStats.Evaluation.Worth.Turns;

/// <summary>Where an option pays along one figure: the turning place nearest to the figure as it is, and the other end of the stretch that pays there.</summary>
internal sealed class PayingRange
{
    /// <summary>Looks for it.</summary>
    /// <param name="net">Net benefit at a value of the figure.</param>
    /// <param name="lower">The lowest value looked at.</param>
    /// <param name="upper">The highest.</param>
    /// <param name="steps">Steps between.</param>
    /// <param name="present">The figure as it is; null where it is not known: the first place then counts.</param>
    /// <param name="to">From the scale of the search to that of the figure, rising; null where they are the same.</param>
    public PayingRange(Func<double, double> net, double lower, double upper, int steps, double? present, Func<double, double>? to = null)
    {
        double Of(double value) => to is null ? value : to(value);
        var places = TurningPoint.All(net, lower, upper, steps);
        if (places.IsEmpty)
        {
            Starts = net(lower) > 0 || net((lower + upper) / 2) > 0 || net(upper) > 0;
            return;
        }

        var at = present is { } now ? Enumerable.Range(0, places.Length).MinBy(index => Math.Abs(Of(places[index].Value) - now)) : 0;
        (Nearest, Rises) = (Of(places[at].Value), places[at].Rises);
        // The stretch that pays lies above a place where the net benefit rises, and below one where it falls.
        var other = Rises ? at + 1 : at - 1;
        if (other >= 0 && other < places.Length) Other = Of(places[other].Value);
    }

    /// <summary>The place nearest to the figure as it is; null where the option pays throughout or nowhere.</summary>
    public double? Nearest { get; }

    /// <summary>Whether it pays above that place.</summary>
    public bool Rises { get; }

    /// <summary>The other end of the stretch that pays; null where that has none within the search.</summary>
    public double? Other { get; }

    /// <summary>Without a place: whether it pays throughout.</summary>
    public bool Starts { get; }
}
