using System.Globalization;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Controls;

/// <summary>One occasion for a control swab: a lot, an operator or a site that starts, or a day on which a site screens.</summary>
/// <param name="Key">Trigger, level, site and first day joined by vertical bars.</param>
/// <param name="Trigger">Which occasion.</param>
/// <param name="Level">The lot, the operator or the site.</param>
/// <param name="Site">The site; for an operator the one of the first day (of several the first by name).</param>
/// <param name="FirstDay">Local day of the first screening run; for <see cref="ControlTrigger.Daily"/> the day itself.</param>
/// <param name="FirstControlDay">Local day of the first passed control that counts for it; null while there is none.</param>
/// <param name="RunsWithoutControl">Screening runs before that day.</param>
public sealed record ControlStart(
    string Key, ControlTrigger Trigger, string Level, string Site, DateOnly FirstDay, DateOnly? FirstControlDay, long RunsWithoutControl)
{
    /// <summary>True where no control was passed on or before the first day. A control later on that day counts, as screens are counted by day.</summary>
    public bool IsMissed => FirstControlDay is not { } day || day > FirstDay;

    /// <summary>True where it was missed and still is: none has been passed since.</summary>
    public bool IsOpen => FirstControlDay is null;

    internal static ControlStart Of(ControlTrigger trigger, string level, string site, DateOnly firstDay, DateOnly? firstControlDay, long runsWithoutControl) => new(
        string.Join('|', LevelNames.Of(trigger), level, site, firstDay.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)),
        trigger, level, site, firstDay, firstControlDay, runsWithoutControl);
}
