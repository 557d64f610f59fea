using ScreenStats.Statistics.Cadence.Answers;

namespace ScreenStats.Cli.Results.Cadence;

/// <summary>How it spreads inside under one way of screening.</summary>
internal sealed record SpreadItem(Figure Reproduction, Figure FiveOrMore, Figure Extinction, Figure Infections, Figure InfectionsInside)
{
    public static SpreadItem Of(SpreadAnswer answer) => new(
        Figure.Of(answer.Reproduction), Figure.Of(answer.Outbreak), Figure.Of(answer.Extinction), Figure.Of(answer.Infections), Figure.Of(answer.InfectionsInside));
}
