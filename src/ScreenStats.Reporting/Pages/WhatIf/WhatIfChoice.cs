using System.Collections.Immutable;

namespace ScreenStats.Reporting.Pages.WhatIf;

/// <summary>Values at which the controls of a what-if can be set at once.</summary>
/// <param name="Name">Whose they are.</param>
/// <param name="Values">A value for each control that it sets, by the control's id.</param>
internal sealed record WhatIfChoice(string Name, ImmutableSortedDictionary<string, double> Values);
