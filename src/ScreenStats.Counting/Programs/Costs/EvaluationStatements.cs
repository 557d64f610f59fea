namespace ScreenStats.Counting.Programs.Costs;

/// <summary>What only people can say about an economic evaluation, in free text, by the items of the reporting list CHEERS 2022. Null: not stated.</summary>
/// <remarks>Source: Husereau D and others, BMJ 2022;376:e067975 (28 items). What data and program file tell of the other items stands in the results.</remarks>
public sealed record EvaluationStatements
{
    /// <summary>Item 3: context, question and why it matters for decisions.</summary>
    public string? Background { get; init; }

    /// <summary>Item 4: whether a plan of the analysis was made beforehand, and where it is.</summary>
    public string? AnalysisPlan { get; init; }

    /// <summary>Item 5: characteristics of the people studied.</summary>
    public string? Population { get; init; }

    /// <summary>Item 6: setting and place, where they bear on the findings.</summary>
    public string? Setting { get; init; }

    /// <summary>Item 7: why these ways of screening were compared.</summary>
    public string? Comparators { get; init; }

    /// <summary>Item 9: why the time looked at is appropriate.</summary>
    public string? Horizon { get; init; }

    /// <summary>Item 10: why this discount rate, or none.</summary>
    public string? Discounting { get; init; }

    /// <summary>Item 11: why these measures of benefit and harm.</summary>
    public string? Outcomes { get; init; }

    /// <summary>Item 13: whose values the outcomes were given, and how they were found.</summary>
    public string? Valuation { get; init; }

    /// <summary>Item 14: how the costs were found.</summary>
    public string? Resources { get; init; }

    /// <summary>Item 18: how results may differ for groups of people.</summary>
    public string? Heterogeneity { get; init; }

    /// <summary>Item 19: how gains and burdens are spread over people.</summary>
    public string? Distribution { get; init; }

    /// <summary>Item 21: how those who are screened, and others affected, took part in the design.</summary>
    public string? Engagement { get; init; }

    /// <summary>Item 25: what their part in it changed.</summary>
    public string? EngagementEffect { get; init; }

    /// <summary>Item 26: limitations, ethics, and what else is known.</summary>
    public string? Limitations { get; init; }

    /// <summary>Item 27: who paid for the analysis, and what part they had in it.</summary>
    public string? Funding { get; init; }

    /// <summary>Item 28: conflicts of interest.</summary>
    public string? Conflicts { get; init; }
}
