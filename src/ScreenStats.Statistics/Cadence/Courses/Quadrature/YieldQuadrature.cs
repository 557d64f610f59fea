using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace ScreenStats.Statistics.Cadence.Courses.Quadrature;

/// <summary>
/// Sums over the first positive screens of a course under a schedule. Where the pattern repeats: for each screen that can be the first one after the
/// infection, over its age; under observed gaps: over the time of day, with a recursion over whole days. Between the ages at which a
/// curve bends all is a polynomial of that age (but for symptoms), so that Gauss-Legendre nodes are exact.
/// </summary>
internal sealed class YieldQuadrature
{
    private const double Nobody = 1e-15;

    private readonly AgeCurve detection;
    private readonly AgeCurve spread;
    private readonly YieldSums sums;
    private readonly PersonChances people;
    private readonly double[] chances;
    private readonly double taken;
    private readonly double acted;
    private readonly double taking;
    private readonly double delay;
    private readonly double[] bends;
    private readonly double widest;
    private readonly List<double> marks = [];
    private int[] pieces = [];
    private int[] after = [];

    public YieldQuadrature(InfectionCourse course, ScreeningSchedule schedule, ScreeningRules rules, YieldSums sums)
    {
        (detection, spread, delay) = (course.Detection, course.Spread, rules.DaysToIsolation);
        this.sums = sums;
        people = new PersonChances(rules.MissCorrelation);
        (taken, acted, taking) = (schedule.Participation, schedule.Participation * rules.FollowThrough, 1 - schedule.NeverTakePart);
        var count = people.Count;
        chances = new double[detection.Ages.Length * count];
        for (var knot = 0; knot < detection.Ages.Length; knot++)
        {
            if (knot > 0 && detection.Values[knot] == detection.Values[knot - 1]) Array.Copy(chances, (knot - 1) * count, chances, knot * count, count);
            else people.Fill(detection.Values[knot], chances.AsSpan(knot * count, count));
        }

        (bends, widest) = Bends(course.Symptoms, rules.IsolationDays);
    }

    /// <summary>The chain of screens from one that can be the first after the infection.</summary>
    /// <param name="gap">Days before it without a screen: its age lies in [0, gap), anywhere with the same chance.</param>
    /// <param name="density">The density of that age.</param>
    /// <param name="later">Days from it to itself, 0, and to the screens that follow, to beyond the course.</param>
    public void Chain(double gap, double density, double[] later)
    {
        var end = Math.Min(gap, detection.Last);
        marks.Clear();
        foreach (var age in bends)
        {
            var k = Array.BinarySearch(later, age);
            for (k = k < 0 ? ~k - 1 : k; k >= 0 && age - later[k] < end; k--)
            {
                if (age - later[k] > 0) marks.Add(age - later[k]);
            }
        }

        EachPiece(end, later, (y, width, count, first) => Follow(y, width * density * taking, later, first, count));
    }

    /// <summary>All screens under observed gaps, whole days apart.</summary>
    /// <param name="first">The density of the age of the first screen, by whole days of that age.</param>
    /// <param name="gaps">Whole days of each gap, rising.</param>
    /// <param name="shares">The share of each gap among gaps.</param>
    public void Renewal(double[] first, int[] gaps, double[] shares)
    {
        var days = new double[(int)Math.Ceiling(detection.Last)];
        for (var day = 0; day < days.Length; day++) days[day] = day;
        marks.Clear();
        foreach (var age in bends)
        {
            var part = age - Math.Floor(age);
            if (age > 0 && part > 0) marks.Add(part);
        }

        var state = new double[days.Length * people.Count];
        EachPiece(1, days, (y, width, count, begin) => Recur(y, width * taking, first, gaps, shares, state, begin, count));
    }

    private (double[] Bends, double Widest) Bends(SymptomOnset? symptoms, double? days)
    {
        var ages = new List<double>(detection.Ages.Length + spread.Ages.Length);
        ages.AddRange(detection.Ages);
        foreach (var age in spread.Ages) ages.Add(age - delay);
        if (symptoms is not { Share: > 0 } known) return ([.. ages], double.MaxValue);
        if (known.LogSpread >= 0.2) return ([.. ages], new OnsetLaw(known).Scale);
        for (var step = -6; step <= 6; step++)
        {
            var age = known.MedianDays * Math.Exp(step * known.LogSpread);
            ages.Add(age);
            ages.Add(age - delay);
            if (days is { } lasting) ages.Add(age - delay - lasting);
        }

        return ([.. ages], double.MaxValue);
    }

    /// <summary>Cuts [0, end) where anything bends and hands the nodes of each piece on, with the screens that can be positive there.</summary>
    private void EachPiece(double end, double[] later, Action<double, double, int, int> visit)
    {
        if (pieces.Length < later.Length) (pieces, after) = (new int[later.Length], new int[later.Length]);
        marks.Add(end);
        marks.Sort();
        var low = 0.0;
        foreach (var high in marks)
        {
            if (!(high - low > 1e-14 * end)) continue;
            var parts = (int)Math.Clamp(Math.Ceiling((high - low) / widest), 1, 256);
            var width = (high - low) / parts;
            for (var part = 0; part < parts; part++) Piece(low + (part * width), width, later, visit);
            low = high;
        }
    }

    private void Piece(double low, double width, double[] later, Action<double, double, int, int> visit)
    {
        var middle = low + (width / 2);
        var first = Array.BinarySearch(later, detection.First - middle);
        first = first < 0 ? ~first : first;
        var (piece, then, bending, curved) = (-1, -1, 0, false);
        var end = first;
        for (; end < later.Length; end++)
        {
            var age = middle + later[end];
            piece = piece < 0 ? detection.Piece(age) : Advance(detection, piece, age);
            if (piece >= detection.Ages.Length - 1) break;
            then = then < 0 ? spread.Piece(age + delay) : Advance(spread, then, age + delay);
            (pieces[end], after[end]) = (piece, then);
            if (!detection.IsFlat(piece)) bending++;
            curved |= then >= 0 && then < spread.Ages.Length - 1 && !spread.IsFlat(then);
        }

        if (end == first) return;

        // Onsets are as good as a polynomial of a degree that falls with the width of the piece.
        var smooth = !sums.Smooth ? 0 : width > 0.5 * widest || widest == double.MaxValue ? 7 : width > 0.05 * widest ? 5 : 3;
        var rule = UnitRule.ForDegree(Math.Max(bending + (curved ? 3 : 1), smooth));
        for (var node = 0; node < rule.Nodes.Length; node++) visit(low + (width * rule.Nodes[node]), width * rule.Weights[node], end, first);
    }

    private static int Advance(AgeCurve curve, int piece, double age)
    {
        while (piece < curve.Ages.Length - 1 && curve.Ages[piece + 1] <= age) piece++;
        return piece;
    }

    private void Follow(double y, double weight, double[] later, int first, int end)
    {
        Span<double> missed = people.Count <= 256 ? stackalloc double[people.Count] : new double[people.Count];
        people.Weights.CopyTo(missed);
        for (var k = first; k < end; k++)
        {
            var age = y + later[k];
            var (before, found) = Screen(age, pieces[k], missed);
            sums.Add(age, after[k], weight * taken * before, weight * acted * found);
            if (before < Nobody) return;
        }
    }

    private void Recur(double y, double weight, double[] first, int[] gaps, double[] shares, double[] state, int begin, int end)
    {
        var count = people.Count;
        for (var k = 0; k < end; k++)
        {
            var now = state.AsSpan(k * count, count);
            var starting = Vector256.Create(first[k]);
            for (var i = 0; i < count; i += PersonChances.Lanes)
            {
                var sum = starting * Vector256.Create<double>(people.Weights.AsSpan(i));
                for (var g = 0; g < gaps.Length && gaps[g] <= k; g++)
                    sum += Vector256.Create(shares[g]) * Vector256.Create<double>(state.AsSpan(((k - gaps[g]) * count) + i));
                sum.CopyTo(now[i..]);
            }

            if (k < begin) continue;
            var age = y + k;
            var (before, found) = Screen(age, pieces[k], now);
            sums.Add(age, after[k], weight * taken * before, weight * acted * found);
        }
    }

    /// <summary>One screen of people not found so far: how many there are and how many are positive; leaves who is left.</summary>
    private (double Before, double Found) Screen(double age, int piece, Span<double> missed)
    {
        var count = people.Count;
        ref var from = ref MemoryMarshal.GetReference(chances.AsSpan(piece * count, count));
        ref var to = ref MemoryMarshal.GetReference(chances.AsSpan((piece + 1) * count, count));
        ref var those = ref MemoryMarshal.GetReference(missed[..count]);
        var part = Vector256.Create((age - detection.Ages[piece]) / (detection.Ages[piece + 1] - detection.Ages[piece]));
        var (before, found, acting) = (Vector256<double>.Zero, Vector256<double>.Zero, Vector256.Create(acted));
        for (nuint i = 0; i < (nuint)count; i += PersonChances.Lanes)
        {
            // All spans hold `count` numbers, a multiple of the lanes, so that none is read past its end.
            var start = Vector256.LoadUnsafe(ref from, i);
            var chance = start + (part * (Vector256.LoadUnsafe(ref to, i) - start));
            var now = Vector256.LoadUnsafe(ref those, i);
            var positive = now * chance;
            before += now;
            found += positive;
            (now - (acting * positive)).StoreUnsafe(ref those, i);
        }

        return (Vector256.Sum(before), Vector256.Sum(found));
    }
}
