using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Cache;

/// <summary>The names that rows of an entry have: only those of rows that count stand in it in full.</summary>
internal sealed class EntryNames
{
    public NameTable Sites { get; } = new();

    public NameTable Lots { get; } = new();

    public NameTable Kits { get; } = new();

    public NameTable Operators { get; } = new();

    public NameTable Strata { get; } = new();

    /// <summary>The table of a column whose names are counted, and the vocabulary behind it.</summary>
    public (NameTable Names, Vocabulary Vocabulary) Of(string column, Vocabularies vocabularies) => column switch
    {
        CanonicalColumns.Site => (Sites, vocabularies.Sites),
        CanonicalColumns.Lot => (Lots, vocabularies.Lots),
        _ => (Kits, vocabularies.Kits),
    };

    public void Write(PackedWriter to, Vocabularies vocabularies)
    {
        Sites.Write(to, vocabularies.Sites);
        Lots.Write(to, vocabularies.Lots);
        Kits.Write(to, vocabularies.Kits);
        Operators.Write(to, vocabularies.Operators);
        Strata.Write(to, vocabularies.Strata);
    }
}
