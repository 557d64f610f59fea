using System.Runtime.InteropServices;

namespace ScreenStats.Evaluation.Disclosure.Counts;

/// <summary>All counts of a release and how they add up.</summary>
internal sealed class CountModel
{
    private readonly Dictionary<(CountUnit, string), CountVariable> byKey = [];
    private readonly Dictionary<CountVariable, List<AdditiveRelation>> byVariable = [];
    private readonly List<CountVariable> variables = [];
    private readonly List<AdditiveRelation> relations = [];

    public IReadOnlyList<CountVariable> Variables => variables;

    public IReadOnlyList<AdditiveRelation> Relations => relations;

    public CountVariable? Find(CountUnit unit, string measure) => byKey.GetValueOrDefault((unit, measure));

    public CountVariable Add(CountUnit unit, string measure, long value, bool sensitive = true)
    {
        var variable = new CountVariable(unit, measure, value) { Sensitive = sensitive };
        byKey.Add((unit, measure), variable);
        variables.Add(variable);
        return variable;
    }

    /// <summary>Adds a relation. It must hold.</summary>
    public void Relate(CountVariable total, params IEnumerable<CountVariable> parts)
    {
        var relation = new AdditiveRelation(total, [.. parts]);
        if (relation.Parts.Sum(part => part.Value) != total.Value) throw new ArgumentException("The parts do not add up to the total.", nameof(parts));
        relations.Add(relation);
        foreach (var (variable, _) in relation.Members)
        {
            ref var list = ref CollectionsMarshal.GetValueRefOrAddDefault(byVariable, variable, out _);
            (list ??= []).Add(relation);
        }
    }

    public IReadOnlyList<AdditiveRelation> RelationsOf(CountVariable variable) => byVariable.TryGetValue(variable, out var list) ? list : [];
}
