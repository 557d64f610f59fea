using System.Collections.Immutable;

namespace ScreenStats.Reporting.Pages;

/// <summary>The analyses that belong to one question.</summary>
/// <param name="Id">Lower case, words joined by hyphens.</param>
/// <param name="Question">The question.</param>
/// <param name="Pages">The analyses.</param>
internal sealed record PageGroup(string Id, string Question, ImmutableArray<Page> Pages);
