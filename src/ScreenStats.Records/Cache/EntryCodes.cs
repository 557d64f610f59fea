using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Cache;

/// <summary>The names of an entry as codes of this run, by number.</summary>
internal sealed record EntryCodes(int[] Sites, int[] Lots, int[] Kits, int[] Operators, int[] Strata)
{
    public int[] Of(string column) => column switch
    {
        CanonicalColumns.Site => Sites,
        CanonicalColumns.Lot => Lots,
        _ => Kits,
    };

    public static EntryCodes Read(ref PackedReader from, Vocabularies vocabularies)
    {
        var sites = NameTable.Read(ref from, vocabularies.Sites);
        var lots = NameTable.Read(ref from, vocabularies.Lots);
        var kits = NameTable.Read(ref from, vocabularies.Kits);
        var operators = NameTable.Read(ref from, vocabularies.Operators);
        return new EntryCodes(sites, lots, kits, operators, NameTable.Read(ref from, vocabularies.Strata));
    }
}
