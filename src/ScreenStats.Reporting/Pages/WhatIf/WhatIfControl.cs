using System.Collections.Immutable;

namespace ScreenStats.Reporting.Pages.WhatIf;

/// <summary>One control of a what-if.</summary>
/// <param name="Id">The figure that it moves.</param>
/// <param name="Label">Its name for people.</param>
/// <param name="Unit">How its figure is printed: <c>share</c> or <c>days</c>.</param>
/// <param name="Stops">The values that its slider stops at, ascending; the first and the last are its ends.</param>
/// <param name="Known">What is known of the figure, in words.</param>
internal sealed record WhatIfControl(string Id, string Label, string Unit, ImmutableArray<double> Stops, string Known);
