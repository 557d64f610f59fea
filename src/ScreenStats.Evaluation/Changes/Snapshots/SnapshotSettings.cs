using System.Collections.Immutable;
using System.Globalization;

namespace ScreenStats.Evaluation.Changes.Snapshots;

/// <summary>The settings that findings.json tells of, in the words in which a change of them is read; the same from findings and from the file.</summary>
public static class SnapshotSettings
{
    /// <summary>The settings of an evaluation.</summary>
    /// <param name="confidence">Confidence of the limits; null where it is not known.</param>
    /// <param name="period">Length of a reporting period.</param>
    /// <param name="hasConfirmatory">Whether there is a confirmatory export.</param>
    /// <param name="confirmWithinHours">Hours within which a specimen follows up a run.</param>
    /// <param name="statedLagHours">Hours allowed for reports by the program file; null where the data said so.</param>
    /// <param name="episodeDays">Days without a confirmatory positive before a case.</param>
    /// <param name="suppressBelow">Counts below this are hidden.</param>
    /// <param name="devices">Each device with its stated sensitivity and specificity; null where not stated.</param>
    /// <returns>Texts in a fixed order.</returns>
    public static ImmutableArray<SnapshotText> Of(
        double? confidence, string period, bool hasConfirmatory, double confirmWithinHours, double? statedLagHours, long episodeDays, long suppressBelow,
        IEnumerable<(string Device, double? Sensitivity, double? Specificity)> devices)
    {
        ArgumentNullException.ThrowIfNull(devices);
        var texts = ImmutableArray.CreateBuilder<SnapshotText>();
        if (confidence is { } level) texts.Add(new("confidence", "Confidence of the limits", Number(level)));
        texts.Add(new("period", "Reporting period", period));
        texts.Add(new("confirmatory-export", "Confirmatory export", hasConfirmatory ? "there" : "none"));
        texts.Add(new("confirm-within-hours", "Hours within which a specimen follows up a run", Number(confirmWithinHours)));
        texts.Add(new("report-lag-hours", "Hours allowed for reports", statedLagHours is { } hours ? Number(hours) : "from the data"));
        texts.Add(new("episode-days", "Days without a confirmatory positive before a case", Number(episodeDays)));
        texts.Add(new("suppress-below", "Counts hidden below", suppressBelow > 1 ? Number(suppressBelow) : "nothing hidden"));
        foreach (var (device, sensitivity, specificity) in devices)
            texts.Add(new("stated-accuracy:" + device, "Stated sensitivity and specificity of " + device, $"{Stated(sensitivity)} and {Stated(specificity)}"));
        return texts.ToImmutable();
    }

    private static string Stated(double? value) => value is { } some ? some.ToString("0.####", CultureInfo.InvariantCulture) : "not stated";

    private static string Number(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);
}
