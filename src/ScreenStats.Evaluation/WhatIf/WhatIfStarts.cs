using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Accuracy;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Evaluation.WhatIf.Grids;

namespace ScreenStats.Evaluation.WhatIf;

/// <summary>Where the controls can start: figures of the data where there are any, else what is stated, else a round value that is called so.</summary>
internal static class WhatIfStarts
{
    /// <summary>Whose figures come first.</summary>
    public const string ThisProgram = "this program";

    private const string Round = "a round value: neither the data nor the program file give one";
    private const string RoundHidden = "a round value: the program file states none, and small counts of the data are hidden";
    private const string Outside = "; the control starts at its nearest end";
    private const double SomePrevalence = 0.005;
    private const double SomeSensitivity = 0.8;
    private const double SomeSpecificity = 0.995;
    private const double SomeDays = 7;

    /// <summary>The starts.</summary>
    /// <param name="settings">What the program file says.</param>
    /// <param name="accuracy">How accurate the screen was; null where nothing may be taken from the data.</param>
    /// <param name="cadence">How often people were screened; null likewise.</param>
    /// <returns>Four of the program, then two or three of each device whose accuracy is stated.</returns>
    public static ImmutableArray<WhatIfStart> Of(ProgramSettings settings, AccuracyFindings? accuracy, CadenceFindings? cadence)
    {
        var confidence = settings.Report.Confidence;
        var round = accuracy is null ? RoundHidden : Round;
        var devices = settings.Screens.Where(screen => screen is { Sensitivity: not null, Specificity: not null }).ToImmutableArray();
        var external = Stated(settings.Prevalence, confidence);
        WhatIfStart Device(ScreenSettings screen, string name, bool sensitivity) => Stated(
            name, sensitivity ? PositiveGrids.Sensitivity : PositiveGrids.Specificity, (sensitivity ? screen.Sensitivity : screen.Specificity)!,
            $"stated of {screen.Name}" + (screen.Source.Length > 0 ? ": " + screen.Source : ""), confidence);
        var starts = ImmutableArray.CreateBuilder<WhatIfStart>();
        starts.Add(Data(PositiveGrids.Prevalence, accuracy?.Prevalence, "infected among the valid tests, by audits and confirmatory tests")
            ?? (external is null ? Rounded(PositiveGrids.Prevalence, SomePrevalence, round) : external with { Key = KeyOf(ThisProgram, PositiveGrids.Prevalence), Name = ThisProgram }));
        starts.Add(Data(PositiveGrids.Sensitivity, accuracy?.Sensitivity, "audits of negative runs and confirmatory tests of positive ones")
            ?? (devices.IsEmpty ? Rounded(PositiveGrids.Sensitivity, SomeSensitivity, round) : Device(devices[0], ThisProgram, sensitivity: true)));
        starts.Add(Data(PositiveGrids.Specificity, accuracy?.Specificity, "audits of negative runs and confirmatory tests of positive ones")
            ?? (devices.IsEmpty ? Rounded(PositiveGrids.Specificity, SomeSpecificity, round) : Device(devices[0], ThisProgram, sensitivity: false)));
        var done = cadence?.Options.FirstOrDefault(option => option is { IsAsDone: true, EveryDays: not null })?.EveryDays;
        starts.Add(done is { } gap
            ? Start(ThisProgram, IntervalGrids.Days, gap, null, null, CadenceNotes.Schedule, null, "mean of the gaps between a person's screens; the control takes whole days", true)
            : Rounded(IntervalGrids.Days, SomeDays, round));
        foreach (var device in devices)
        {
            starts.Add(external is { } prevalence
                ? prevalence with { Key = KeyOf(device.Name, PositiveGrids.Prevalence), Name = device.Name }
                : starts[0] with { Key = KeyOf(device.Name, PositiveGrids.Prevalence), Name = device.Name });
            starts.Add(Device(device, device.Name, sensitivity: true));
            starts.Add(Device(device, device.Name, sensitivity: false));
        }

        return starts.ToImmutable();
    }

    private static WhatIfStart? Data(string measure, EstimateFinding? figure, string source) =>
        figure is { Estimate: { } value, Method: { } method } && (measure != PositiveGrids.Prevalence || value > 0)
            ? Start(ThisProgram, measure, value, figure.Lower, figure.Upper, method, figure.Confidence, "these data: " + source, true) : null;

    private static WhatIfStart? Stated(PrevalenceSettings? prevalence, double confidence) => prevalence is not { Value: > 0 } stated ? null
        : Start("", PositiveGrids.Prevalence, stated.Value, stated.Lower, stated.Upper, MethodNames.Stated, stated.Lower is null ? null : confidence,
            "external prevalence of the program file" + (stated.Source.Length > 0 ? ": " + stated.Source : ""), false);

    private static WhatIfStart Stated(string name, string measure, StatedAccuracy stated, string source, double confidence)
    {
        var limits = stated.TakenAsExact ? (Statistics.Interval?)null : stated.Statement().IntervalAt(confidence);
        return Start(name, measure, stated.Value, limits?.Lower, limits?.Upper, MethodNames.Stated, limits is null ? null : confidence, source, false);
    }

    private static WhatIfStart Rounded(string measure, double value, string source) => Start(ThisProgram, measure, value, null, null, MethodNames.Grid, null, source, false);

    private static WhatIfStart Start(string name, string measure, double value, double? lower, double? upper, string method, double? confidence, string source, bool fromData)
    {
        var shown = measure switch
        {
            PositiveGrids.Prevalence => ThreeDigits(value),
            PositiveGrids.Sensitivity => Math.Round(value, 3),
            PositiveGrids.Specificity => Math.Round(value, 4),
            _ => Math.Round(value, MidpointRounding.AwayFromZero),
        };
        var at = measure switch
        {
            PositiveGrids.Prevalence => Math.Clamp(shown, PositiveGrids.LowestPrevalence, PositiveGrids.HighestPrevalence),
            PositiveGrids.Sensitivity => Math.Clamp(shown, PositiveGrids.LowestSensitivity, PositiveGrids.HighestSensitivity),
            PositiveGrids.Specificity => Math.Clamp(shown, PositiveGrids.LowestSpecificity, PositiveGrids.HighestSpecificity),
            _ => Math.Clamp(shown, 1, IntervalGrids.LongestDays),
        };
        return new WhatIfStart(KeyOf(name, measure), name, measure, value, lower, upper, method, confidence, at != shown ? source + Outside : source, fromData, at);
    }

    private static double ThreeDigits(double value) => double.Parse(value.ToString("G3", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    private static string KeyOf(string name, string measure) => name + "|" + measure;
}
