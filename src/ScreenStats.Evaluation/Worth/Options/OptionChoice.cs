using ScreenStats.Evaluation.Cadence.Options;
using ScreenStats.Evaluation.Worth.Rows;

namespace ScreenStats.Evaluation.Worth.Options;

/// <summary>One way of screening with what follows a positive.</summary>
/// <param name="Option">The way of screening.</param>
/// <param name="Confirmation">What follows a positive.</param>
internal sealed record OptionChoice(ScreeningOption Option, WorthConfirmation Confirmation)
{
    /// <summary>What tells what it finds and removes: without a confirmatory test nobody waits for one.</summary>
    public ScreeningOption Does { get; init; } = Option;

    public string Key => Option.Name + "|" + WorthNames.Of(Confirmation);

    public string Name => Option.Name + WorthNames.InWords(Confirmation);
}
