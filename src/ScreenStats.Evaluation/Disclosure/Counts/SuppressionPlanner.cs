namespace ScreenStats.Evaluation.Disclosure.Counts;

/// <summary>
/// Hides small counts, and as little else as makes the range that a reader can work out for each of them reach the threshold.
/// </summary>
/// <remarks>
/// A hidden count is protected by a witness: another set of counts that agrees with everything shown and in which the hidden count is at
/// or above the threshold. The least costly witness (a hidden count costs nothing to move, a shown one its own size for each step, so large counts
/// stay visible) is found as a linear program, and what it moves is hidden too. In a table with margins it is the rectangle with the least
/// information. A count of nobody that was hidden on the way is protected in a next round where a reader could tell that it is small.
/// Source: the attacker's linear programs of suppression, M. Fischetti and J. J. Salazar, 2001, Management Science 47:1008 (from memory).
/// </remarks>
internal static class SuppressionPlanner
{
    private const int FewLevels = 8;

    /// <summary>Larger programs are not solved: what they might save is hidden instead.</summary>
    private const int MostVariables = 900;

    /// <summary>Hides what must be hidden.</summary>
    /// <param name="model">The counts; those that must be hidden for another reason already are, with their need.</param>
    /// <param name="threshold">Counts from 1 to one less are hidden.</param>
    /// <returns>The witness of every protected count, and the counts that cannot be protected.</returns>
    public static SuppressionPlan Protect(CountModel model, long threshold)
    {
        foreach (var variable in model.Variables)
        {
            if (variable.Sensitive && !variable.Known && variable.Value > 0 && variable.Value < threshold) variable.Need = Math.Max(variable.Need, threshold);
            if (variable.Need > 0) variable.Hidden = variable.Published && !variable.Known;
        }

        var witnesses = new Dictionary<CountVariable, IReadOnlyDictionary<CountVariable, double>>();
        var best = new Dictionary<CountVariable, IReadOnlyDictionary<CountVariable, double>>();
        var open = new List<CountVariable>();
        var asked = model.Variables.Where(variable => variable.Need > 0 && !variable.Known).ToList();
        while (asked.Count > 0)
        {
            foreach (var variable in asked.OrderByDescending(variable => variable.Need - variable.Value))
            {
                var wanted = variable.Need - variable.Value;
                if (wanted <= 0) continue;
                if (!(best.TryGetValue(variable, out var known) && known[variable] >= wanted)) known = Scopes(model, variable).Select(scope => Witness(model, scope, variable, wanted)).FirstOrDefault(found => found is not null);
                if (known is null && model.Variables.All(other => !other.Known))
                {
                    // No way was found with something left to show: nothing is shown, and nothing can be worked out.
                    return SuppressionPlan.HideAll(model, new SuppressionPlan(witnesses, []));
                }

                if (known is null)
                {
                    open.Add(variable);
                    continue;
                }

                witnesses[variable] = known;
                foreach (var (moved, by) in known)
                {
                    moved.Hidden = moved.Published;
                    if (!best.TryGetValue(moved, out var other) || other[moved] < by) best[moved] = known;
                }
            }

            asked = Told(model, best, threshold);
            foreach (var variable in asked) variable.Need = threshold;
        }

        return new SuppressionPlan(witnesses, open);
    }

    // Counts of nobody that are hidden for others: a reader who finds that one is below the threshold cannot tell that it is nobody's.
    private static List<CountVariable> Told(CountModel model, Dictionary<CountVariable, IReadOnlyDictionary<CountVariable, double>> best, long threshold)
    {
        var audit = new RangeAudit(model);
        return [.. model.Variables.Where(variable => variable is { Hidden: true, Sensitive: true, Need: 0, Value: 0, Known: false, Absent: false }
            && !(best.TryGetValue(variable, out var moved) && moved[variable] >= threshold) && audit.Range(variable) is { Upper: > 0 and var most } && most < threshold)];
    }

    // First the levels of one breakdown under unmoved totals, the likely ones before all; then everything.
    private static IEnumerable<HashSet<CountVariable>> Scopes(CountModel model, CountVariable variable)
    {
        var own = variable.Unit.Breakdown;
        var beside = Beside(model, variable);
        if (own.Length > 0)
        {
            var levels = model.Variables.Where(other => other.Unit.Breakdown == own).ToList();
            foreach (var most in new[] { 2, FewLevels })
            {
                var few = Few(levels, variable, most);
                if (few.Count + beside.Count <= MostVariables) yield return [.. few, .. beside];
                if (few.Count == levels.Count) break;
            }
        }

        var whole = model.Variables.Where(other => other.Unit.Breakdown.Length == 0).ToList();
        foreach (var most in new[] { 1, 3, FewLevels })
        {
            var some = model.Variables.GroupBy(other => other.Unit.Breakdown).Where(group => group.Key.Length > 0).SelectMany(group => Few([.. group], variable, most)).Concat(whole).Concat(beside).ToHashSet();
            if (some.Count > MostVariables) yield break;
            yield return some;
            if (some.Count == model.Variables.Count) yield break;
        }
    }

    // Levels of other breakdowns that hold the same runs must move along, and so must the few levels of a brief breakdown.
    private static List<CountVariable> Beside(CountModel model, CountVariable variable)
    {
        var own = variable.Unit.Breakdown;
        var sums = model.Variables.Where(other => other.Unit.By == "overlap").ToList();
        if (own.Length == 0) return sums;
        var partners = model.Variables.Where(other => other.Unit == variable.Unit).SelectMany(model.RelationsOf).SelectMany(relation => relation.Members).Select(member => member.Variable)
            .SelectMany(other => other.Unit.By == "overlap" ? model.RelationsOf(other).SelectMany(relation => relation.Members).Select(member => member.Variable) : [other])
            .Where(other => other.Unit.Breakdown.Length > 0 && other.Unit.Breakdown != own && other.Unit.By != "overlap")
            .GroupBy(other => other.Unit).OrderByDescending(unit => unit.Count(other => other.Hidden)).ThenByDescending(unit => unit.Sum(other => other.Value))
            .Take(FewLevels).Select(unit => unit.Key).ToHashSet();
        if (partners.Count == 0) return sums;
        var brief = model.Variables.GroupBy(other => other.Unit.Breakdown)
            .Where(group => group.Key.Length > 0 && group.Key != "overlap" && group.Select(other => other.Unit).Distinct().Count() <= 4).Select(group => group.Key).ToHashSet(StringComparer.Ordinal);
        return [.. sums, .. model.Variables.Where(other => partners.Contains(other.Unit) || brief.Contains(other.Unit.Breakdown))];
    }

    private static HashSet<CountVariable> Few(List<CountVariable> levels, CountVariable variable, int most)
    {
        var units = levels.GroupBy(other => other.Unit).ToList();
        if (units.Count <= 2 * most) return [.. levels];
        var touched = units.OrderByDescending(unit => unit.Count(other => other.Hidden)).ThenByDescending(unit => unit.Sum(other => other.Value)).Take(most);
        var cheap = units.Where(unit => unit.Any(other => other.Measure == variable.Measure && other.Value >= variable.Need)).OrderBy(unit => unit.Sum(other => other.Value)).Take(most);
        return [.. touched.Concat(cheap).Concat(units.Where(unit => unit.Key == variable.Unit)).SelectMany(unit => unit)];
    }

    private static Dictionary<CountVariable, double>? Witness(CountModel model, HashSet<CountVariable> scope, CountVariable target, long wanted)
    {
        var columns = new int[model.Variables.Count];
        Array.Fill(columns, -1);
        var upper = new List<double>();
        var cost = new List<double>();
        foreach (var variable in model.Variables)
        {
            if (variable == target || variable.Known || variable.Absent || !scope.Contains(variable)) continue;
            columns[variable.Place] = upper.Count;
            upper.AddRange([double.PositiveInfinity, Math.Max(0, variable.Value - variable.LowerBound)]);
            var one = variable.Hidden || !variable.Published ? 0.0 : Math.Max(1, variable.Value);
            cost.AddRange([one, one]);
        }

        var equations = new List<(IReadOnlyList<(int, double)>, double)>();
        foreach (var relation in model.Relations)
        {
            var left = new List<(int, double)>();
            var right = 0.0;
            foreach (var (variable, sign) in relation.Members)
            {
                if (variable == target) right -= sign * wanted;
                else if (columns[variable.Place] is >= 0 and var column) left.AddRange([(column, sign), (column + 1, -sign)]);
            }

            if (left.Count > 0) equations.Add((left, right));
            else if (right != 0) return null;
        }

        var program = new LinearProgram([.. upper], equations);
        if (!program.Feasible || program.Minimize([.. cost]) is not { } least) return null;
        var moved = new Dictionary<CountVariable, double> { [target] = wanted };
        foreach (var variable in model.Variables)
        {
            if (columns[variable.Place] is not (>= 0 and var column)) continue;
            var by = least.At[column] - least.At[column + 1];
            if (Math.Abs(by) > 1e-6) moved.Add(variable, by);
        }

        return moved;
    }
}
