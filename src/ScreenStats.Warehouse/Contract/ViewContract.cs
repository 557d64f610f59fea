using System.Collections.Immutable;

namespace ScreenStats.Warehouse.Contract;

/// <summary>The columns of the two views, as the README of this assembly states them.</summary>
internal static class ViewContract
{
    public const string Bucket = "bucket";
    public const string Person = "person";
    public const string Site = "site";
    public const string CollectedAt = "collected_at";
    public const string CollectedOn = "collected_on";
    public const string Result = "result";
    public const string Lot = "lot";
    public const string Kit = "kit";
    public const string LotExpiry = "lot_expiry";
    public const string ReadAt = "read_at";
    public const string Operator = "operator";
    public const string Specimen = "specimen";
    public const string Collection = "collection";
    public const string Symptomatic = "symptomatic";
    public const string Exposed = "exposed";
    public const string Outbreak = "outbreak";
    public const string Control = "control";
    public const string ScreenId = "screen_id";
    public const string RowNumber = "row_number";
    public const string ReportedAt = "reported_at";
    public const string ReportedOn = "reported_on";
    public const string Method = "method";
    public const string Reason = "reason";
    public const string SamplingStratum = "sampling_stratum";

    /// <summary>In the order of <see cref="Counting.Cubes.Outcome"/>.</summary>
    public static ImmutableArray<string> Outcomes { get; } = ["negative", "positive", "inconclusive", "invalid"];

    /// <summary>In the order of <see cref="Counting.Cubes.ConfirmatoryResult"/>.</summary>
    public static ImmutableArray<string> Results { get; } = ["negative", "positive", "indeterminate", "rejected"];

    /// <summary>In the order of <see cref="Counting.Cubes.Specimen"/>, behind "not recorded".</summary>
    public static ImmutableArray<string> Specimens { get; } = ["nasal", "nasopharyngeal", "throat", "saliva", "other"];

    /// <summary>In the order of <see cref="Counting.Cubes.CollectedBy"/>, behind "not recorded".</summary>
    public static ImmutableArray<string> Collections { get; } = ["supervised", "self"];

    /// <summary>In the order of <see cref="Counting.Cubes.ControlExpectation"/>.</summary>
    public static ImmutableArray<string> Controls { get; } = ["negative", "positive"];

    /// <summary>In the order of <see cref="Counting.Cubes.SpecimenReason"/>, behind "not recorded".</summary>
    public static ImmutableArray<string> Reasons { get; } = ["follow-up", "audit", "other"];

    public static ImmutableArray<ViewColumn> Screening { get; } =
    [
        new(Person, ViewType.Text, true), new(Site, ViewType.Text, true), new(CollectedAt, ViewType.Time, true), new(CollectedOn, ViewType.Date, true),
        new(Result, ViewType.Text, true) { Words = Outcomes }, new(Bucket, ViewType.Whole), new(Lot, ViewType.Text), new(Kit, ViewType.Text), new(LotExpiry, ViewType.Date),
        new(ReadAt, ViewType.Time), new(Operator, ViewType.Text), new(Specimen, ViewType.Text) { Words = Specimens }, new(Collection, ViewType.Text) { Words = Collections },
        new(Symptomatic, ViewType.YesNo), new(Exposed, ViewType.YesNo), new(Outbreak, ViewType.YesNo), new(Control, ViewType.Text) { Words = Controls },
        new(ScreenId, ViewType.Text), new(RowNumber, ViewType.Whole),
    ];

    public static ImmutableArray<ViewColumn> Confirmatory { get; } =
    [
        new(Person, ViewType.Text, true), new(CollectedAt, ViewType.Time, true), new(CollectedOn, ViewType.Date, true), new(Result, ViewType.Text, true) { Words = Results },
        new(ReportedAt, ViewType.Time), new(ReportedOn, ViewType.Date), new(Method, ViewType.Text), new(Reason, ViewType.Text) { Words = Reasons },
        new(SamplingStratum, ViewType.Text), new(RowNumber, ViewType.Whole), new(Bucket, ViewType.Whole),
    ];
}
