namespace ScreenStats.Evaluation.Worth.Turns;

/// <summary>How a figure that turns an option is called.</summary>
/// <param name="Figure">The figure.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="Unit">In what it is measured.</param>
internal sealed record TurnName(string Figure, string Name, string Unit)
{
    /// <summary>The key of the option, where it is not the one judged.</summary>
    public string Option { get; init; } = "";

    public string Key => Option.Length == 0 ? Figure : Figure + "|" + Option;
}
