namespace ScreenStats.Evaluation.WhatIf;

/// <summary>What screening every so many days gives, at exactly these values.</summary>
/// <param name="Key">What tells the row from the others; <c>start</c> for where the controls start.</param>
/// <param name="DaysBetweenScreens">Days between screens.</param>
/// <param name="Sensitivity">Sensitivity of the screen; null where the course of the infection holds it.</param>
/// <param name="SensitivityUndefined">Why there is none; null where there is one.</param>
/// <param name="Specificity">Specificity of the screen.</param>
/// <param name="Detection">Share of infections that a screen finds.</param>
/// <param name="Removed">Share of the infectious time that falls after isolation, by a screen or by symptoms; null where the infectious time is not known.</param>
/// <param name="RemovedUndefined">Why there is none; null where there is one.</param>
/// <param name="Caught">Share of infected people isolated before they pass anything on; null likewise.</param>
/// <param name="CaughtUndefined">Why there is none; null where there is one.</param>
/// <param name="Screens">Screens of one person within the days counted over.</param>
/// <param name="FalseAlarms">False alarms among the people within the days counted over.</param>
public sealed record IntervalOutcome(
    string Key, double DaysBetweenScreens, double? Sensitivity, string? SensitivityUndefined, double Specificity, double Detection, double? Removed, string? RemovedUndefined, double? Caught, string? CaughtUndefined,
    double Screens, double FalseAlarms);
