namespace ScreenStats.Evaluation;

/// <summary>What about a lot or a site needs looking into. Never a verdict on its positives, nor on who may return to work.</summary>
[Flags]
#pragma warning disable CA1711 // "Flag" is the word of the trade for what this is, and the name of the column it fills.
public enum Flag
#pragma warning restore CA1711
{
    /// <summary>Nothing stands out.</summary>
    None = 0,

    /// <summary>More refuted positives than chance readily makes.</summary>
    Refuted = 1,

    /// <summary>More inconclusive and invalid runs than chance readily makes.</summary>
    Invalid = 2,
}
