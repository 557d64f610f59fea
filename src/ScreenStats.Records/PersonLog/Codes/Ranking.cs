namespace ScreenStats.Records.PersonLog.Codes;

/// <summary>The levels of a vocabulary in ordinal order, so that what comes out does not depend on who came first.</summary>
internal sealed class Ranking
{
    private readonly int[] ranks;

    public Ranking(Vocabulary vocabulary)
    {
        Texts = vocabulary.ToArray();
        Order = OrdinalOrder(Texts);
        ranks = new int[Texts.Length];
        for (var rank = 0; rank < ranks.Length; rank++) ranks[Order[rank]] = rank;
    }

    /// <summary>Texts by code.</summary>
    public string[] Texts { get; }

    /// <summary>Codes by rank.</summary>
    public int[] Order { get; }

    // By the first eight letters as one number, then by the whole text where these are equal: there can be very many operators.
    private static int[] OrdinalOrder(string[] texts)
    {
        var order = new int[texts.Length];
        var prefixes = new ulong[texts.Length];
        for (var code = 0; code < texts.Length; code++)
        {
            order[code] = code;
            prefixes[code] = Prefix(texts[code]);
        }

        Array.Sort(prefixes, order);
        for (var i = 0; i < order.Length;)
        {
            var start = i;
            while (i < order.Length && prefixes[i] == prefixes[start]) i++;
            if (i - start > 1) order.AsSpan(start, i - start).Sort((a, b) => string.CompareOrdinal(texts[a], texts[b]));
        }

        return order;
    }

    // A letter of more than eight bits ends the prefix: all those are equal, and so is what follows.
    private static ulong Prefix(string text)
    {
        var prefix = 0ul;
        for (var at = 0; at < 8; at++)
        {
            var letter = at < text.Length ? text[at] : '\0';
            if (letter >= 255) return (prefix << (8 * (8 - at))) | (ulong.MaxValue >> (8 * at));
            prefix = (prefix << 8) | letter;
        }

        return prefix;
    }

    public int RankOf(int code) => ranks[code];

    public string TextOfRank(int rank) => Texts[Order[rank]];
}
