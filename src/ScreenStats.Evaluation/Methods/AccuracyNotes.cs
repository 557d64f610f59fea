using System.Collections.Immutable;
using ScreenStats.Statistics.Accuracy;
using ScreenStats.Statistics.Bounds;
using ScreenStats.Statistics.Prevalence;
using ScreenStats.Statistics.Verification;

namespace ScreenStats.Evaluation.Methods;

/// <summary>Methods for accuracy, predictive values and prevalence.</summary>
internal static class AccuracyNotes
{
    public static ImmutableArray<MethodNote> All { get; } =
    [
        new(MethodNames.Stated, "As stated",
            "A figure of the program file, not of these data. Its limits: Wilson's where it is stated as counts, those stated where it comes with an interval, none where it is a bare value, which is taken as exact.",
            ["1 − specificity for the rate of false positives"], "The source that the program file names."),
        new(MethodNames.WeightedAccuracy, "Accuracy of several devices",
            "The stated accuracies of the devices, each weighted by its valid tests in the same part and period.",
            ["Σ wᵢ aᵢ, variance Σ wᵢ² Var(aᵢ); wᵢ: share of the valid tests that were done with device i, aᵢ: its accuracy"], "Mean of independent figures with fixed weights."),
        new(RoganGladen.MethodName, "Rogan and Gladen's correction",
            "The share of positives is a mixture of true and false ones; with the accuracy known it can be solved for the share infected. Held at 0 where fewer are positive than false positives alone would be. Limits add the chance in the positives to the uncertainty of the accuracy.",
            ["π = (t + Sp − 1) / (Se + Sp − 1)", "variance (d t (1 − t)/n + π² Var(Se) + (1 − π)² Var(Sp)) / (Se + Sp − 1)²; limits π ± z times its root, within 0 and 1", "t: share positive of n; Se, Sp: sensitivity, specificity; d: design effect, with fewer than 30 clusters times (t quantile/z)²; 1 for the limits that are not widened", "where a count is 0 or all of its trials, its variance is taken at (x + ½)/(n + 1)"],
            "W. J. Rogan, B. Gladen, 1978, American Journal of Epidemiology 107:71–76."),
        new(LangReiczigel.MethodName, "Lang and Reiczigel's interval",
            "Rogan and Gladen's value, with an interval that covers near the stated confidence also where few are infected and the accuracy comes from a study of moderate size: a little is added to each of the three counts first, and the centre is shifted.",
            ["π' + s ± z √(p'(1 − p')/n' + π'² Se'(1 − Se')/n₁' + (1 − π')² Sp'(1 − Sp')/n₀') / (Se' + Sp' − 1)", "s = 2 z² (π' Se'(1 − Se')/n₁' − (1 − π') Sp'(1 − Sp')/n₀'), π' = (p' + Sp' − 1)/(Se' + Sp' − 1)", "p' = (x + z²/2)/n', n' = n + z²; Se' = (x₁ + 1)/n₁', n₁' = n₁ + 2; Sp' likewise; x of n positive, x₁ of n₁ the study of sensitivity; widened: x and n divided by d"],
            "Z. Lang, J. Reiczigel, 2014, Preventive Veterinary Medicine 113:13–22."),
        new(BayesianPrevalence.MethodName, "Exact posterior",
            "What counts of positives and of both accuracy studies together leave likely of the prevalence, if nothing was known before: its mean, and the interval with as much probability below as above. It never says exactly 0, since few positives prove no absence.",
            ["density of π ∝ ∫∫ q^x (1 − q)^(n − x) · f(Se) g(Sp) dSe dSp, q = π Se + (1 − π)(1 − Sp)", "f, g: beta distributions of the stated counts with uniform priors; uniform prior of π; widened: x and n divided by d"],
            "A. Gelman, B. Carpenter, 2020, Journal of the Royal Statistical Society C 69:1269–1283, section 2; by quadrature, not simulation."),
        new(PredictiveValue.LogitMethod, "Bayes' rule with limits on the logit scale",
            "Of the positives, the share that would be right at a given prevalence, and of the negatives likewise. Limits carry the uncertainty of the stated accuracy, and of the prevalence where it is stated with one.",
            ["Se π / (Se π + (1 − Sp)(1 − π)) for a positive, Sp (1 − π) / (Sp (1 − π) + (1 − Se) π) for a negative", "limits: logit of it ± z √(variance of the logit); where a count is 0 or all of its trials, half is added to it and to its complement for the limits", "Se, Sp: sensitivity, specificity; π: prevalence"],
            "N. D. Mercaldo, K. F. Lau, X. H. Zhou, 2007, Statistics in Medicine 26:2170–2183."),
        new(PredictiveValue.ExactInputsMethod, "Bayes' rule from exact figures",
            "The same where every figure that goes in was taken as exact, so that there are no limits.",
            ["Se π / (Se π + (1 − Sp)(1 − π)) for a positive, Sp (1 − π) / (Sp (1 − π) + (1 − Se) π) for a negative"], "T. Bayes, 1763."),
        new(MethodNames.Bounds, "Worst and best case",
            "The figure if all positives without a conclusive confirmatory result had been refuted, and if all had been confirmed: whatever is missing, the truth of the counts lies between.",
            ["confirmed / (confirmed + refuted + u) to (confirmed + u) / (confirmed + refuted + u); u: positives without a conclusion"], "Counting; C. F. Manski, 2003, Partial Identification of Probability Distributions."),
        new(BeggGreenes.MethodName, "Correction for partial verification",
            "Only some negatives were audited. Each result is weighted up to all runs with that screening result. Right where chance alone chose who was verified.",
            ["sensitivity a n₁ / (a n₁ + b n₀), specificity (1 − b) n₀ / ((1 − a) n₁ + (1 − b) n₀)", "n₁, n₀: positive and negative runs; a: share confirmed of the verified positives, b: share missed of the audited negatives", "limits on the logit scale, each term's from its own Wilson limits"],
            "C. B. Begg, R. A. Greenes, 1983, Biometrics 39:207–215; limits after G. Y. Zou, A. Donner, 2008, Statistics in Medicine 27:1693–1702."),
        new(PersonRobustAccuracy.MethodName, "Audits weighted by stratum, clusters of runs taken together",
            "Each audited negative run stands for the negative runs of its sampling stratum, each verified positive run for the positive ones. The variance adds up squares over people, so that many runs of one person count as far as they tell something new; or squares over sites, where that is more and there are at least 5 sites, with Student's quantile below 30 sites; limits are Wilson's on the numbers of independent runs that would have that variance. Right where chance alone chose within each stratum who was verified.",
            ["sensitivity a n₁ / (a n₁ + Σ N_h b_h), specificity Σ N_h (1 − b_h) / ((1 − a) n₁ + Σ N_h (1 − b_h)); N_h, b_h: negative runs of stratum h and the share missed of its audited ones",
             "variance of a share: G/(G − 1) Σ z², z the influence on it of a person (or of a site), G people (or sites), the larger of the two; effective runs p(1 − p)/variance",
             "limits of the three shares (confirmed, missed, positive) put together side by side",
             "negative runs of infected people: Σ N_h b_h, which is Σ N_h (1 − negative predictive value); its limits from those of that value, upside down"],
            "C. B. Begg, R. A. Greenes, 1983, Biometrics 39:207–215; D. A. Binder, 1983, International Statistical Review 51:279–292; G. Y. Zou, A. Donner, 2008, Statistics in Medicine 27:1693–1702."),
        new(OneSidedAccuracy.MethodName, "Exact one-sided limit",
            "Where too little was seen for an interval: the value that the truth passes on one side only with the stated confidence.",
            ["Clopper and Pearson's limit with α in place of α/2"], "C. J. Clopper, E. S. Pearson, 1934, Biometrika 26:404–413."),
        new(AccuracyBounds.MethodName, "Bounds without assumptions",
            "Everything that sensitivity, specificity or prevalence could be, whatever the runs that were not verified would have shown.",
            ["the smallest and the largest value over all ways to fill in the unverified runs"], "C. F. Manski, 2003, Partial Identification of Probability Distributions."),
        new(ImbensManski.MethodName, "Limits around bounds",
            "An interval that holds the truth, which lies somewhere within the bounds, with the stated confidence.",
            ["lower bound − c · s₁ to upper bound + c · s₂, Φ(c + (upper − lower)/max(s₁, s₂)) − Φ(−c) = confidence", "s₁, s₂: standard errors of the bounds"],
            "G. W. Imbens, C. F. Manski, 2004, Econometrica 72:1845–1857."),
        new(SpecificityProof.MethodName, "What positivity alone proves of specificity",
            "False positives are positives: a test that finds infected people at least as often as others has a specificity of at least 1 − positivity.",
            ["Sp ≥ 1 − t where Se ≥ 1 − Sp; t: positivity, at its exact one-sided upper limit on counts divided by the design effect, with fewer than 30 clusters times (t quantile/z)²"], "Elementary: t = π Se + (1 − π)(1 − Sp) ≥ 1 − Sp."),
    ];
}
