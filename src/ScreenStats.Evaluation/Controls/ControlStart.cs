using System.Text.Json.Serialization;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Evaluation.Controls;

/// <summary>One occasion for a control swab: a lot, an operator or a site that starts, or a day on which a site screens.</summary>
/// <param name="Trigger">Which occasion.</param>
/// <param name="Level">The lot, the operator or the site.</param>
/// <param name="Site">The site; for an operator the one of the first day (of several the first by name).</param>
/// <param name="FirstDay">Local day of the first screening run; for <see cref="ControlTrigger.Daily"/> the day itself.</param>
/// <param name="FirstControlDay">Local day of the first passed control that counts for it; null while there is none.</param>
/// <param name="RunsWithoutControl">Screening runs before that day.</param>
internal sealed record ControlStart(ControlTrigger Trigger, string Level, string Site, DateOnly FirstDay, DateOnly? FirstControlDay, long RunsWithoutControl)
{
    /// <summary>True where no control was passed on or before the first day. A control later on that day counts, as screens have no time here.</summary>
    [JsonIgnore]
    public bool IsMissed => FirstControlDay is not { } day || day > FirstDay;

    /// <summary>True where it was missed and still is: none has been passed since.</summary>
    [JsonIgnore]
    public bool IsOpen => FirstControlDay is null;
}
