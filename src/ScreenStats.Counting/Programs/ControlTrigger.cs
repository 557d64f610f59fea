namespace ScreenStats.Counting.Programs;

/// <summary>An occasion on which the program's own rules ask for a run of control swabs.</summary>
public enum ControlTrigger
{
    /// <summary>Before a site first uses a lot.</summary>
    NewLot,

    /// <summary>Before an operator's first run.</summary>
    NewOperator,

    /// <summary>Before a site's first run.</summary>
    NewSite,

    /// <summary>On each day on which a site screens.</summary>
    Daily,
}
