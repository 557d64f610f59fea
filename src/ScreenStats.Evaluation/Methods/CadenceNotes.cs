using System.Collections.Immutable;

namespace ScreenStats.Evaluation.Methods;

/// <summary>Methods for how often to screen.</summary>
internal static class CadenceNotes
{
    public const string Draws = "cadence-draws";
    public const string Steps = "cadence-step";
    public const string Choice = "cadence-choice";
    public const string Turns = "option-by-incidence";
    public const string OneWay = "one-at-a-time";
    public const string Schedule = "screens-due";
    public const string Adherence = "plan-and-practice";
    public const string Incidence = "cases-by-exposure";

    public static ImmutableArray<MethodNote> All { get; } =
    [
        new(Draws, "What a way of screening gives, with draws",
            "The course of an infection and the days of the screens give the chance that it is found by each age, and the share of the infectious time that falls after isolation. The figure is at the central assumptions; its limits hold the middle of the draws, in each of which every assumption takes a random value within its range, the same for all options. They are limits of what is expected on average, not of what chance makes of it. As done: each site with its own gaps, sites weighted by their person-days (of simulated viral loads all gaps together). Who is infected is immune for the days that the program file states; those infected in as many days before are immune at the beginning, and return day by day, and imports and R, measured with them at work, are scaled so that what was done holds its level (at most 95 % of the people are taken as immune: a higher incidence is taken as that at which they are). Where the file states none, nobody is immune at the beginning and nobody is infected twice within the days looked at. All sites are one workplace for what spreads inside: where a case causes 1 or more without screening that makes upper limits too high, since an outbreak in a small site ends for want of people. The sensitivity of audits is by run among people not yet found; where misses repeat in a person it is a little below that of a first screen, so that with the correlation of misses stated too little is found rather than too much. Audits see only what the confirmatory test can find: the detectable days stated must be those of that test.",
            ["found by age x: 1 − Π (1 − p(a)) over the screens up to x, averaged over when the infection happens between two screens; removed: ∫ infectiousness(x) × isolated by x dx / ∫ infectiousness(x) dx",
             "infections I = λ × people × days; infectious days outside isolation, calendar days with days off included, = I × days infectious × (1 − removed); inside, each case causes R (1 − removed) / (1 − removed without screening) more; in the data, with the share b brought in, R now = 1 − b, so R without screening = (1 − b) (1 − removed without screening) / (1 − removed as done)",
             "with immunity of D days, N people and e = λ N a day: S = N − D e can be infected at the end of a day; imports b e k and reproduction R k among people none of whom is immune, k = N / e × ln(1 + e / S)",
             "days removed = I without × days infectious × (1 − removed by symptoms) − I × days infectious × (1 − removed), of which (I without − I) × days infectious × (1 − removed by symptoms) are of infections averted; share removed = days removed / those without screening",
             "inconclusive = screens × inconclusive share of runs; each is tested, and repeated on the same day, as often as in the data",
             "false alarms = screens × (1 − specificity); each loses, where people leave on the screen, settled share of positives × days lost to one that is refuted + (1 − settled share) × isolation days; predictive value = found / (found + false alarms)",
             "days away added = I × days away of one infection − I without × share with symptoms × share of these who stay away × isolation days; days away of one infection: isolation days from the isolation by a screen on, and likewise from symptoms on, days in both counted once"],
            "Derived; A. Briggs, K. Claxton, M. Sculpher, 2006, Decision Modelling for Health Economic Evaluation, on probabilistic sensitivity analysis (from memory)."),
        new(Steps, "What a step to more frequent screening adds",
            "The difference between two neighbouring options, divided by the difference of their screens, or of their false alarms, draw by draw. It is the marginal gain: the average over all screens looks good long after one more screen adds little.",
            ["1,000 × (gain of the next − gain of this) / (screens of the next − screens of this)"],
            "D. Neuhauser, A. M. Lewicki, 1975, N Engl J Med 293:226–228 (from memory)."),
        new(Choice, "The option to choose",
            "Each 1,000 screens must remove so many infectious days as the program file says: the option is chosen whose days removed less that price of its screens are most. Where each step adds less than the one before, that is the last step that still adds as much. The share of draws says how sure it is.",
            ["max over options: infectious days removed − worthwhile × screens / 1,000"],
            "Net benefit; derived."),
        new(Turns, "The option by how much infection there is",
            "Infectious days removed grow with the number of infections, the price of screens does not: the incidence at which the option to choose changes is searched by halving, all other assumptions at their centre. The incidence of the last days of the data is their cases, by the share of all screens that was taken in them: it takes the gaps between screens, the accuracy and the follow-up to be then what they were in all days; positives that still wait for their result are no cases yet. Its ratio to the days before has exact limits, given the cases of both.",
            ["λ last = cases last / (E × followed up × s), s = screens last / screens; ratio = cases last / cases before × (1 − s) / s, limits by the binomial distribution (Clopper and Pearson): p / (1 − p) × (1 − s) / s"],
            "Derived; C. J. Clopper, E. S. Pearson, 1934, Biometrika 26:404–413."),
        new(OneWay, "One assumption at a time",
            "Each assumption at the ends of its 95 % range, the others at their centre. Cases stay as they were counted: where less of an infection is found, more of them must have happened.",
            ["swing = |days removed at the upper end − days removed at the lower end|"],
            "A. Briggs, K. Claxton, M. Sculpher, 2006, Decision Modelling for Health Economic Evaluation (from memory)."),
        new(Schedule, "Days between screens",
            "Days from one screen of a person to the next, as the option states it: on fixed weekdays seven divided by their number; as done, the mean of the gaps between a person's screens, runs on the same day being one screen.",
            ["7 / weekdays; Σ gap × count / Σ count"],
            "By definition."),
        new(Adherence, "Plan and practice",
            "What was planned against what was done: screens due are the days from each person's first screen to the last, divided by the planned days between two; what is found and removed is computed under the plan with everybody taking part, and under the real gaps.",
            ["due = Σ gap × count / planned days; done = Σ count; share = done / due"],
            "By definition."),
        new(Incidence, "Infections per person-day",
            "Cases divided by the person-days that they could have been found in: for each gap between two screens of a person, the chance that an infection is found by the screen that ends it, summed over when the infection began, under the real gaps and the course of the infection, site by site. Cases divided by person-days alone is a lower bound. It is no prevalence.",
            ["λ = cases / (E × followed up); E = people × ∫ p(x) dx + Σ over gaps g of count × ∫ p(x) × not found before the screen at age x dx; limits: gamma draws of the cases over draws of E"],
            "Derived; F. Garwood, 1936, Biometrika 28:437–442, for counts."),
    ];
}
