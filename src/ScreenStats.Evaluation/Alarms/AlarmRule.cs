namespace ScreenStats.Evaluation.Alarms;

/// <summary>The rules that raise an alarm.</summary>
public enum AlarmRule
{
    /// <summary>A lot has more refuted positives than the lots beside it, at the same sites on the same days.</summary>
    LotEvidence = 0,

    /// <summary>A site's or lot's invalid-run rate is above the limit, proven.</summary>
    InvalidEvidence = 1,

    /// <summary>A site's or lot's invalid-run rate has risen above what is ordinary there.</summary>
    InvalidRise = 2,

    /// <summary>A control swab did not show what it should, and none has since.</summary>
    ControlFailed = 3,

    /// <summary>A control swab that the program's rules ask for was not run.</summary>
    ControlMissing = 4,

    /// <summary>An expired lot was used lately.</summary>
    ExpiredLot = 5,

    /// <summary>More runs than a kit holds were recorded lately.</summary>
    KitOverrun = 6,

    /// <summary>A lot has fewer confirmed positives than the lots beside it: it may miss infections.</summary>
    LowYield = 7,

    /// <summary>Refuted positives of a site come faster than before at the same site.</summary>
    RefutedRise = 8,
}
