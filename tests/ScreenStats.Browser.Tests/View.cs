namespace ScreenStats.Browser.Tests;

/// <summary>How a report is looked at.</summary>
/// <param name="Width">Width of the window in CSS pixels.</param>
/// <param name="Height">Height of the window in CSS pixels.</param>
public sealed record View(int Width, int Height)
{
    /// <summary>A desk.</summary>
    public static View Desk { get; } = new(1280, 900);

    /// <summary>A small phone.</summary>
    public static View SmallPhone { get; } = new(360, 740) { Phone = true };

    /// <summary>A desk in the dark.</summary>
    public static View Night { get; } = new(1280, 900) { Dark = true };

    /// <summary>The views that every test of looks runs in, by name.</summary>
    public static View Named(string name) => name switch
    {
        "desk" => Desk,
        "phone" => SmallPhone,
        "dark" => Night,
        "dark phone" => SmallPhone with { Dark = true },
        "narrowest" => new View(320, 640) { Phone = true }, // the width at which WCAG 2.2, 1.4.10 asks for reflow
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "A view that has a name."),
    };

    /// <summary>Whether the reader prefers dark pages.</summary>
    public bool Dark { get; init; }

    /// <summary>Whether it is a device that is held in the hand.</summary>
    public bool Phone { get; init; }

    /// <summary>Whether scripts may run.</summary>
    public bool Scripts { get; init; } = true;

    /// <summary>Whether the reader prefers that nothing moves.</summary>
    public bool ReducedMotion { get; init; }
}
