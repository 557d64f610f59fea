namespace ScreenStats.Records.PersonLog;

/// <summary>The levels of a vocabulary in ordinal order, so that what comes out does not depend on who came first.</summary>
internal sealed class Ranking
{
    private readonly int[] ranks;

    public Ranking(Vocabulary vocabulary)
    {
        Texts = vocabulary.ToArray();
        Order = Enumerable.Range(0, Texts.Length).ToArray();
        Array.Sort((string[])Texts.Clone(), Order, StringComparer.Ordinal);
        ranks = new int[Texts.Length];
        for (var rank = 0; rank < ranks.Length; rank++) ranks[Order[rank]] = rank;
    }

    /// <summary>Texts by code.</summary>
    public string[] Texts { get; }

    /// <summary>Codes by rank.</summary>
    public int[] Order { get; }

    public int RankOf(int code) => ranks[code];

    public string TextOfRank(int rank) => Texts[Order[rank]];
}
