namespace ScreenStats.Evaluation.Disclosure.Counts;

/// <summary>
/// Proves a suppression: the range of each hidden count over all counts that agree with what is shown, from two linear programs over the
/// additive relations, one connected set of unknown counts at a time.
/// </summary>
internal sealed class RangeAudit
{
    /// <summary>Above this many cells of a tableau the range is not solved for; the witness proves the count protected all the same.</summary>
    public const long MostCells = 40_000;

    private readonly CountModel model;
    private readonly Dictionary<CountVariable, long> known = [];
    private readonly Dictionary<CountVariable, Component> components = [];

    /// <summary>Takes what a reader sees, and what follows from it at once.</summary>
    public RangeAudit(CountModel model)
    {
        this.model = model;
        foreach (var variable in model.Variables.Where(variable => variable.Known || variable.Absent || (variable.Published && !variable.Hidden))) known.Add(variable, variable.Value);
        var queue = new Queue<AdditiveRelation>(model.Relations);
        while (queue.TryDequeue(out var relation))
        {
            var unknown = relation.Members.Where(member => !known.ContainsKey(member.Variable)).Take(2).ToList();
            if (unknown.Count != 1) continue;
            known.Add(unknown[0].Variable, unknown[0].Variable.Value);
            foreach (var other in model.RelationsOf(unknown[0].Variable)) queue.Enqueue(other);
        }

        Connect();
    }

    /// <summary>Whether a count is known, shown or derived by one sum or difference after another.</summary>
    public bool IsKnown(CountVariable variable) => known.ContainsKey(variable);

    /// <summary>The range of a count; null where its set of unknown counts is too large to solve for.</summary>
    public CountRange? Range(CountVariable variable)
    {
        if (known.TryGetValue(variable, out var value)) return new CountRange(value, value);
        if (!components.TryGetValue(variable, out var component)) return new CountRange(variable.LowerBound, null);
        if (component.Cells > MostCells) return null;
        var program = component.Program ??= component.Build(known);
        var cost = new double[component.Columns.Count];
        cost[component.Columns[variable]] = 1;
        var lower = program.Minimize(cost)!.Value.Value;
        cost[component.Columns[variable]] = -1;
        var upper = program.Minimize(cost);
        return new CountRange(
            variable.LowerBound + (long)Math.Ceiling(lower - 1e-5),
            upper is { } most ? variable.LowerBound + (long)Math.Floor(-most.Value + 1e-5) : null);
    }

    /// <summary>Whether a witness is one: it agrees with every relation, moves no shown count and leaves none below its lower bound.</summary>
    public bool Holds(IReadOnlyDictionary<CountVariable, double> witness) =>
        witness.All(moved => !known.ContainsKey(moved.Key) && moved.Key.Value + moved.Value >= moved.Key.LowerBound - 1e-6)
        && witness.Keys.SelectMany(model.RelationsOf).Distinct().All(relation => Math.Abs(relation.Members.Sum(member => member.Sign * witness.GetValueOrDefault(member.Variable))) < 1e-6);

    private void Connect()
    {
        foreach (var start in model.Variables)
        {
            if (known.ContainsKey(start) || components.ContainsKey(start) || model.RelationsOf(start).Count == 0) continue;
            var component = new Component();
            var queue = new Queue<CountVariable>([start]);
            components.Add(start, component);
            while (queue.TryDequeue(out var variable))
            {
                component.Columns.Add(variable, component.Columns.Count);
                foreach (var relation in model.RelationsOf(variable))
                {
                    if (!component.Relations.Add(relation)) continue;
                    foreach (var (other, _) in relation.Members)
                    {
                        if (!known.ContainsKey(other) && components.TryAdd(other, component)) queue.Enqueue(other);
                    }
                }
            }
        }
    }

    private sealed class Component
    {
        public Dictionary<CountVariable, int> Columns { get; } = [];

        public HashSet<AdditiveRelation> Relations { get; } = new(ReferenceEqualityComparer.Instance);

        public LinearProgram? Program { get; set; }

        public long Cells => (long)Columns.Count * Relations.Count;

        // Variables are distances from lower bounds.
        public LinearProgram Build(Dictionary<CountVariable, long> known)
        {
            var upper = new double[Columns.Count];
            Array.Fill(upper, double.PositiveInfinity);
            return new LinearProgram(upper, Relations.Select(relation =>
            {
                var left = new List<(int, double)>();
                var right = 0.0;
                foreach (var (variable, sign) in relation.Members)
                {
                    if (known.TryGetValue(variable, out var value)) right -= sign * value;
                    else
                    {
                        left.Add((Columns[variable], sign));
                        right -= sign * variable.LowerBound;
                    }
                }

                return ((IReadOnlyList<(int, double)>)left, right);
            }));
        }
    }
}
