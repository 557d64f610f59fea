using System.Collections.Immutable;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Evaluation.Worth.Options;
using ScreenStats.Evaluation.Worth.Rows;
using ScreenStats.Statistics.Economics.Turning;

namespace ScreenStats.Evaluation.Worth.Turns;

/// <summary>From how much infection on each option repays its cost against no screening, and which one gains most for how much infection: the ladder.</summary>
internal static class IncidenceRows
{
    private const string Figure = "weekly-incidence";
    private const int Steps = 48;
    private const double LadderStep = 1.1;

    // Two options that follow each other this closely have no other between them that anybody could tell.
    private const double Near = 1 + 1e-6;

    /// <summary>The row of the option judged.</summary>
    public static WorthTurn Judged(IncidenceNets nets, OptionFigures judged) => Row(nets, judged.Choice, "");

    /// <summary>A row of each other option, and of what was done.</summary>
    public static ImmutableArray<WorthTurn> Others(IncidenceNets? nets, OptionTable options) => nets is null ? [] :
        [.. AllAtOnce.Of(
            options.Known.Append(options.AsDone is { IsKnown: true } done && nets.Follows(done.Choice) ? done : null).OfType<OptionFigures>().Where(option => !option.Choice.Option.IsNone && option != options.Judged).ToList(),
            option => Row(nets, option.Choice, option.Choice.Key))];

    /// <summary>The ladder, from the least infection to the most; each way of screening with a confirmatory test of positives, or without.</summary>
    public static ImmutableArray<WorthRung> Ladder(IncidenceNets? nets)
    {
        if (nets is null) return [];
        var changes = new List<(double At, int Way)>();
        var (before, way) = (IncidenceNets.Least, Best(IncidenceNets.Least));
        var first = way;
        while (before < nets.Most)
        {
            var next = Math.Min(before * LadderStep, nets.Most);
            var there = Best(next);
            Between(before, way, next, there);
            (before, way) = (next, there);
        }

        var rungs = changes.Prepend((At: 0, Way: first)).ToList();
        var present = nets.Present.Value;
        return [.. rungs.Select((rung, index) => Rung(rung, index))];

        WorthRung Rung((double At, int Way) rung, int index)
        {
            var name = Name(rung.Way);
            var (from, to) = (IncidenceNets.Weekly(rung.At)!.Value, index + 1 < rungs.Count ? IncidenceNets.Weekly(rungs[index + 1].At) : null);
            var again = rungs.FindIndex(other => Name(other.Way) == name) != index;
            var ends = (Math.Max(rung.At, IncidenceNets.Least), index + 1 < rungs.Count ? rungs[index + 1].At : nets.Most);
            return new WorthRung(again ? FormattableString.Invariant($"{name}|{index + 1}") : name, name, After(rung.Way, ends), from, to, rung.Way < 0, present >= from && (to is not { } end || present < end));
        }

        // No screening is -1, and has 0; a tie goes to it, and then to the less frequent.
        int Best(double incidence)
        {
            var net = nets.At(incidence);
            var (best, most) = (-1, 0.0);
            for (var index = 0; index < nets.Ways.Length; index++)
            {
                if (Most(net, index) is var gain && gain > most) (best, most) = (index, gain);
            }

            return best;
        }

        double Most(Func<OptionChoice, double> net, int index) => index < 0 ? 0 : nets.Ways[index].Max(net);

        // Where pools save tests in a part of it only it is said to be confirmed, which it is in all of it.
        WorthConfirmation After(int index, (double From, double To) ends)
        {
            if (index < 0) return WorthConfirmation.NotNeeded;
            var (low, high) = (nets.At(ends.From), nets.At(ends.To));
            return nets.Ways[index].FirstOrDefault(choice => choice.Confirmation == WorthConfirmation.Pooled && nets.Ways[index].All(other => other == choice || (low(choice) > low(other) && high(choice) > high(other))))?.Confirmation
                ?? nets.Ways[index][0].Confirmation;
        }

        string Name(int index) => index < 0 ? WorthRung.None : nets.Ways[index][0].Option.Name;

        void Between(double low, int atLow, double high, int atHigh)
        {
            if (atLow == atHigh) return;
            if (high / low < Near)
            {
                changes.Add((Math.Exp(TurningPoint.All(At, Math.Log(low), Math.Log(high), 1) is [var place] ? place.Value : Math.Log(low * high) / 2), atHigh));
                return;
            }

            var middle = Math.Sqrt(low * high);
            var here = Best(middle);
            Between(low, atLow, middle, here);
            Between(middle, here, high, atHigh);

            double At(double logarithm)
            {
                var net = nets.At(Math.Exp(logarithm));
                return Most(net, atHigh) - Most(net, atLow);
            }
        }
    }

    private static WorthTurn Row(IncidenceNets nets, OptionChoice choice, string option)
    {
        var present = nets.Present;
        var range = new PayingRange(
            logarithm => nets.At(Math.Exp(logarithm))(choice), Math.Log(IncidenceNets.Least), Math.Log(nets.Most), Steps, present.Value, logarithm => IncidenceNets.Weekly(Math.Exp(logarithm))!.Value);
        return TurnRows.Searched(new(Figure, "infections in a week", "per 1,000 people in a week") { Option = option }, range, present);
    }
}
