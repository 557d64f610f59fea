namespace ScreenStats.Evaluation.WhatIf.Grids;

/// <summary>On what scale a place between two nodes of an axis is measured.</summary>
public enum GridScale
{
    /// <summary>By the figure itself.</summary>
    Linear = 0,

    /// <summary>By the natural logarithm of the figure.</summary>
    Logarithm = 1,

    /// <summary>By the natural logarithm of what is missing to 1: for figures near 1.</summary>
    LogarithmOfRest = 2,
}
