namespace ScreenStats.Evaluation.WhatIf;

/// <summary>What to expect among people screened once, and what their results are worth, at exactly these values.</summary>
/// <param name="Key">What tells the row from the others; <c>start</c> for where the controls start.</param>
/// <param name="Prevalence">Share of infected people among those screened.</param>
/// <param name="Sensitivity">Sensitivity of the screen.</param>
/// <param name="Specificity">Specificity of the screen.</param>
/// <param name="TruePositives">Infected people with a positive screen.</param>
/// <param name="FalsePositives">People who are not infected with a positive screen.</param>
/// <param name="Missed">Infected people with a negative screen.</param>
/// <param name="PositivePredictiveValue">Of the positives, the share infected.</param>
/// <param name="NegativePredictiveValue">Of the negatives, the share not infected.</param>
public sealed record ScreenedOutcome(
    string Key, double Prevalence, double Sensitivity, double Specificity, double TruePositives, double FalsePositives, double Missed, double PositivePredictiveValue, double NegativePredictiveValue);
