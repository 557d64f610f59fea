using System.Collections.Immutable;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Warehouse.Contract;

/// <summary>The columns of the two views, as the README of this assembly states them.</summary>
internal static class ViewContract
{
    public const string Bucket = "bucket";
    public const string Person = CanonicalColumns.Person;
    public const string Site = CanonicalColumns.Site;
    public const string CollectedAt = CanonicalColumns.CollectedAt;
    public const string CollectedOn = "collected_on";
    public const string Result = CanonicalColumns.Result;
    public const string Lot = CanonicalColumns.Lot;
    public const string Kit = CanonicalColumns.Kit;
    public const string LotExpiry = CanonicalColumns.LotExpiry;
    public const string ReadAt = CanonicalColumns.ReadAt;
    public const string Operator = CanonicalColumns.Operator;
    public const string Specimen = CanonicalColumns.Specimen;
    public const string Collection = CanonicalColumns.Collection;
    public const string Symptomatic = CanonicalColumns.Symptomatic;
    public const string Exposed = CanonicalColumns.Exposed;
    public const string Outbreak = CanonicalColumns.Outbreak;
    public const string Control = CanonicalColumns.Control;
    public const string ScreenId = CanonicalColumns.ScreenId;
    public const string RowNumber = "row_number";
    public const string ReportedAt = CanonicalColumns.ReportedAt;
    public const string ReportedOn = "reported_on";
    public const string Method = CanonicalColumns.Method;
    public const string Reason = CanonicalColumns.Reason;
    public const string SamplingStratum = CanonicalColumns.SamplingStratum;

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
