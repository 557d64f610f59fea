namespace ScreenStats.Evaluation.Disclosure.Counts;

/// <summary>What protects each hidden count.</summary>
/// <param name="Witnesses">For each count with a need: by how much which counts differ in a set of counts that a reader cannot tell from the true one.</param>
/// <param name="HidesAll">Whether every count is hidden, so that no proof is needed.</param>
/// <param name="Unprotected">Counts that no hiding can protect, because an earlier release gives them away.</param>
internal sealed record SuppressionPlan(
    IReadOnlyDictionary<CountVariable, IReadOnlyDictionary<CountVariable, double>> Witnesses, IReadOnlyList<CountVariable> Unprotected, bool HidesAll = false)
{
    /// <summary>Hides every count, so that nothing can be worked out.</summary>
    public static SuppressionPlan HideAll(CountModel model, SuppressionPlan plan)
    {
        foreach (var variable in model.Variables) variable.Hidden = variable.Published;
        return new SuppressionPlan(plan.Witnesses, [], HidesAll: true);
    }
}
