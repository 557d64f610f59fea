using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ScreenStats.Counting.Cubes;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.PersonLog.Sums;
using ScreenStats.Warehouse.Contract;
using ScreenStats.Warehouse.Sql;

namespace ScreenStats.Warehouse.Reading;

/// <summary>
/// Writes the sampling strata of audits as an expression. A stratum is all sites of a list with all lots of a list and one way of
/// collection, so it is told by trying every site and lot.
/// </summary>
internal static class StratumSql
{
    private static readonly CollectedBy[] Collections = Enum.GetValues<CollectedBy>();

    /// <summary>An expression that numbers the stratum of a run from 1, 0 for none, and its parameters.</summary>
    public static (string Expression, ImmutableArray<object> Parameters) Of(AuditSampling sampling, Dialect dialect, ScreeningSql sql, Vocabularies vocabularies)
    {
        var (sites, lots) = (vocabularies.Sites.ToArray(), vocabularies.Lots.ToArray());
        var strata = new SortedDictionary<int, (HashSet<string> Sites, HashSet<string> Lots, HashSet<CollectedBy> Collections)>();
        foreach (var site in sites)
        {
            foreach (var lot in lots)
            {
                foreach (var collection in Collections)
                {
                    var stratum = sampling.StratumOf(site, lot, collection);
                    if (stratum < 0) continue;
                    if (!strata.TryGetValue(stratum, out var known)) strata[stratum] = known = ([], [], []);
                    known.Sites.Add(site);
                    known.Lots.Add(lot);
                    known.Collections.Add(collection);
                }
            }
        }

        var text = new StringBuilder("CASE");
        var parameters = ImmutableArray.CreateBuilder<object>();
        foreach (var (stratum, told) in strata)
        {
            var conditions = new List<string>();
            if (told.Sites.Count < sites.Length) conditions.Add(Among("site", told.Sites));
            if (told.Lots.Count < lots.Length)
            {
                var some = told.Lots.Where(lot => lot != Levels.None).ToArray();
                var named = sql.Lot.Length > 0 && some.Length > 0 ? Among("lot", some) : "1 = 0";
                conditions.Add(told.Lots.Contains(Levels.None) ? sql.Lot.Length > 0 ? $"(lot IS NULL OR lot = '' OR {named})" : "1 = 1" : named);
            }

            if (told.Collections.Count < Collections.Length) conditions.Add(sql.CollectionIs([.. told.Collections.Where(one => one != CollectedBy.NotRecorded).Select(one => ViewContract.Collections[(int)one - 1])], told.Collections.Contains(CollectedBy.NotRecorded)));
            text.Append(CultureInfo.InvariantCulture, $" WHEN {(conditions.Count == 0 ? "1 = 1" : string.Join(" AND ", conditions))} THEN {stratum + 1}");
        }

        return (strata.Count == 0 ? "CASE WHEN 1 = 1 THEN 0 END" : text.Append(" ELSE 0 END").ToString(), parameters.ToImmutable());

        string Among(string column, IEnumerable<string> values)
        {
            parameters.Add(values.ToArray());
            return dialect.Among(column, parameters.Count);
        }
    }
}
