using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Reporting.Charts.Model;

namespace ScreenStats.Reporting.Pages;

/// <summary>One analysis as the report shows it: sentences, pictures, tables, limits and method, in this order.</summary>
/// <param name="Id">Lower case, words joined by hyphens.</param>
/// <param name="Heading">Heading.</param>
/// <param name="Finding">The findings it shows.</param>
/// <param name="CannotTell">What these figures cannot tell.</param>
/// <param name="Method">How they were made, with the source.</param>
internal sealed record Page(string Id, string Heading, IFinding Finding, string CannotTell, string Method)
{
    /// <summary>Pictures.</summary>
    public ImmutableArray<Chart> Charts { get; init; } = [];

    /// <summary>Pictures that stand at the top of the report instead of in the page, which leads to them.</summary>
    public ImmutableArray<Chart> AtTop { get; init; } = [];

    /// <summary>Why such a picture is left out, in its place; empty where none is.</summary>
    public string InsteadAtTop { get; init; } = "";

    /// <summary>Parts of tables.</summary>
    public ImmutableArray<TableView> Tables { get; init; } = [];

    /// <summary>Parts with headings, which take up the pictures and tables in their order; what none of them takes stands before them. Empty for a page without parts.</summary>
    public ImmutableArray<PagePart> Parts { get; init; } = [];

    /// <summary>Controls that ask "what if"; null for none.</summary>
    public WhatIf.WhatIfView? WhatIf { get; init; }

    /// <summary>What must be known before acting on these figures; empty for nothing of their own.</summary>
    public string Caution { get; init; } = "";
}
