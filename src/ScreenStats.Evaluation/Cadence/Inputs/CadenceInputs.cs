using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Cadence.Inputs;

/// <summary>What the data of a program, or its program file, give for the question how often to screen.</summary>
public sealed record CadenceInputs
{
    /// <summary>Sensitivity of one screen while the infection can be detected: stated, else from the audits, else that stated of the devices.</summary>
    public required EstimateFinding Sensitivity { get; init; }

    /// <summary>Specificity of one screen: stated, else from the refuted positives of lots that are not flagged, else that stated of the devices.</summary>
    public required EstimateFinding Specificity { get; init; }

    /// <summary>Infections per person-day: stated, else cases by the exposure under the real gaps. Never a prevalence.</summary>
    public required EstimateFinding Incidence { get; init; }

    /// <summary>Cases found per person-day at risk: what the incidence is at least.</summary>
    public required EstimateFinding FoundPerPersonDay { get; init; }

    /// <summary>Share of positives that got a conclusive confirmatory result.</summary>
    public required EstimateFinding FollowThrough { get; init; }

    /// <summary>Share of due screens that are taken.</summary>
    public required EstimateFinding Participation { get; init; }

    /// <summary>Working days that one false alarm costs that is refuted.</summary>
    public required EstimateFinding FalseAlarmDays { get; init; }

    /// <summary>People screened.</summary>
    public required long People { get; init; }

    /// <summary>People with a counted run in the data.</summary>
    public required long PeopleInData { get; init; }

    /// <summary>Cases in the data that a positive run found.</summary>
    public required long Cases { get; init; }

    /// <summary>Days between a person's consecutive screens in the data, the shortest first.</summary>
    public required ImmutableArray<CadenceGap> Gaps { get; init; }

    /// <summary>Share of the runs in the data that fell on a Saturday or Sunday; null without runs.</summary>
    public required double? AtWeekends { get; init; }

    /// <summary>Person-days at risk: the sum of those gaps.</summary>
    public long PersonDays => Gaps.Sum(gap => gap.Days * gap.Count);
}
