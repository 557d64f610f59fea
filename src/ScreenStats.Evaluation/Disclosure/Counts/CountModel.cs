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
        var variable = new CountVariable(unit, measure, value) { Sensitive = sensitive, Place = variables.Count };
        byKey.Add((unit, measure), variable);
        variables.Add(variable);
        return variable;
    }

    /// <summary>Adds a relation. It must hold.</summary>
    public void Relate(CountVariable total, params IEnumerable<CountVariable> parts) => Relate(new AdditiveRelation(total, [.. parts], []), nameof(parts));

    /// <summary>Adds a relation in which parts count several times. It must hold.</summary>
    public void RelateWeighted(CountVariable total, IEnumerable<(CountVariable Part, int Times)> parts)
    {
        var list = parts.ToList();
        Relate(new AdditiveRelation(total, [.. list.Select(one => one.Part)], [.. list.Select(one => one.Times)]), nameof(parts));
    }

    /// <summary>Adds that one count is part of another, by a rest that is nobody's secret; nothing where it is the larger one, or either is not there.</summary>
    public void Bound(CountVariable? part, CountVariable? whole)
    {
        if (part is null || whole is null || part == whole || part.Value > whole.Value) return;
        var name = $"{whole.Unit} {whole.Measure} without {part.Measure}";
        if (Find(part.Unit, name) is not null) return;
        Relate(whole, part, Add(part.Unit, name, whole.Value - part.Value, sensitive: false));
    }

    private void Relate(AdditiveRelation relation, string parameter)
    {
        if (relation.Members.Sum(member => member.Sign * member.Variable.Value) != 0) throw new ArgumentException("The parts do not add up to the total.", parameter);
        relations.Add(relation);
        foreach (var (variable, _) in relation.Members)
        {
            ref var list = ref CollectionsMarshal.GetValueRefOrAddDefault(byVariable, variable, out _);
            (list ??= []).Add(relation);
        }
    }

    public IReadOnlyList<AdditiveRelation> RelationsOf(CountVariable variable) => byVariable.TryGetValue(variable, out var list) ? list : [];
}
