using System.Collections.Immutable;

namespace ScreenStats.Evaluation.Methods;

/// <summary>Methods for what would be at other values.</summary>
internal static class WhatIfNotes
{
    public const string Expected = "expected-among-screened";
    public const string Interval = "interval-at-exact-values";

    public static ImmutableArray<MethodNote> All { get; } =
    [
        new(Expected, "Expected among people screened once",
            "How many people would be positive and infected, positive and not infected, and negative though infected, at exactly the prevalence and accuracy asked for. Expected numbers need not be whole, and no chance is in them.",
            ["N π Se; N (1 − π) (1 − Sp); N π (1 − Se); N: people screened, π: prevalence, Se, Sp: sensitivity, specificity",
             "on the page: grids of these, of the likelihood ratios Se / (1 − Sp) and (1 − Se) / Sp, and of the predictive values by prevalence and ratio; between nodes a polynomial through the four nearest along each axis, off by less than half of the last digit printed"],
            "By definition; T. J. Fagan, 1975, New England Journal of Medicine 293:257, for the two steps by way of the ratio; J. L. Lagrange, 1795, for the polynomial (from memory)."),
        new(Interval, "One interval between screens, at exact values",
            "The course of an infection and a screen every so many days give the chance that it is found, the share of the infectious time that falls after isolation, and the chance that the person is away before it begins: as for how often to screen, with every assumption but the sensitivity at its central value and without draws, so that no uncertainty is in it. False alarms take nobody to be infected.",
            ["found: Π (1 − p(a)) over the screens up to x, averaged over when the infection happens between two screens; removed: ∫ infectiousness(x) × isolated by x dx / ∫ infectiousness(x) dx",
             "screens = D / T × share taken; false alarms = N × screens × (1 − Sp); D: days counted over, T: days between screens, N: people",
             "on the page: a grid of these with each whole day as a node; between its sensitivities a polynomial through the four nearest, off by less than half of the last digit printed"],
            "Derived; inspection theory: R. E. Barlow, F. Proschan, 1965, Mathematical Theory of Reliability (from memory); J. L. Lagrange, 1795, for the polynomial (from memory)."),
    ];
}
