namespace ScreenStats.Reporting.Pages.WhatIf;

/// <summary>A piece of what a what-if says: words, or a figure that the page looks up.</summary>
/// <param name="Text">The words; of a figure how it is printed where the controls start.</param>
/// <param name="Figure">Id of the control or grid that has the figure; null for words.</param>
/// <param name="Unit">How it is printed: <c>share</c>, <c>number</c> or <c>days</c>; null for words.</param>
internal sealed record WhatIfPart(string Text, string? Figure, string? Unit);
