using System.Collections.Immutable;
using ScreenStats.Evaluation;
using ScreenStats.Reporting.Pages.Accuracy;
using ScreenStats.Reporting.Pages.Alarms;
using ScreenStats.Reporting.Pages.Audits;
using ScreenStats.Reporting.Pages.Bursts;
using ScreenStats.Reporting.Pages.Cadence;
using ScreenStats.Reporting.Pages.Changes;
using ScreenStats.Reporting.Pages.Comparisons;
using ScreenStats.Reporting.Pages.Completeness;
using ScreenStats.Reporting.Pages.Conduct;
using ScreenStats.Reporting.Pages.ControlCharts;
using ScreenStats.Reporting.Pages.Controls;
using ScreenStats.Reporting.Pages.Coverage;
using ScreenStats.Reporting.Pages.Delays;
using ScreenStats.Reporting.Pages.Detection;
using ScreenStats.Reporting.Pages.Expected;
using ScreenStats.Reporting.Pages.Flow;
using ScreenStats.Reporting.Pages.FollowThrough;
using ScreenStats.Reporting.Pages.IntervalCases;
using ScreenStats.Reporting.Pages.InvalidRuns;
using ScreenStats.Reporting.Pages.Kits;
using ScreenStats.Reporting.Pages.Ledger;
using ScreenStats.Reporting.Pages.LotRecording;
using ScreenStats.Reporting.Pages.Lots;
using ScreenStats.Reporting.Pages.LotTests;
using ScreenStats.Reporting.Pages.Participation;
using ScreenStats.Reporting.Pages.Persons;
using ScreenStats.Reporting.Pages.Positivity;
using ScreenStats.Reporting.Pages.PredictiveValues;
using ScreenStats.Reporting.Pages.Refuted;
using ScreenStats.Reporting.Pages.Repeats;
using ScreenStats.Reporting.Pages.Retests;
using ScreenStats.Reporting.Pages.Sites;
using ScreenStats.Reporting.Pages.Specimens;
using ScreenStats.Reporting.Pages.StandOuts;
using ScreenStats.Reporting.Pages.Trends;
using ScreenStats.Reporting.Pages.TruePrevalence;
using ScreenStats.Reporting.Pages.WhatIf;
using ScreenStats.Reporting.Pages.Worth;
using ScreenStats.Reporting.Pages.Yield;

namespace ScreenStats.Reporting.Pages;

/// <summary>Every page of the report, under the question that it serves, in the order in which the questions are answered. A new analysis is one line here.</summary>
internal static class AllPages
{
    /// <summary>The pages of the findings.</summary>
    public static ImmutableArray<PageGroup> Of(Findings findings) =>
    [
        Question(findings, "what-a-positive-is-worth",
            PredictiveValuePage.Of(findings),
            WhatIfPages.Positive(findings),
            FollowUpPage.Of(findings),
            DelayPage.Of(findings),
            RefutedPage.Of(findings),
            ExpectedPage.Of(findings),
            RetestPage.Of(findings)),
        Question(findings, "which-lots-and-sites-stand-out",
            StandOutPage.Of(findings),
            AlarmPage.Of(findings),
            LotPage.Of(findings),
            PlaceTestPages.Lots(findings),
            LotRecordingPage.Of(findings),
            BurstPage.Of(findings),
            SitePage.Of(findings),
            PlaceTestPages.Sites(findings),
            DetectionPage.Of(findings),
            KitPage.Of(findings),
            InvalidRunPage.Of(findings),
            ControlChartPage.Of(findings),
            ControlPage.Of(findings),
            ConductPage.Of(findings),
            RepeatPage.Of(findings)),
        Question(findings, "how-much-screening-for-each-case",
            YieldPage.Of(findings),
            PositivityPage.Of(findings),
            TruePrevalencePage.Of(findings),
            PersonPage.Of(findings),
            ParticipationPage.Of(findings),
            CoveragePage.Of(findings)),
        Question(findings, "how-accurate-is-the-screen",
            AccuracyPage.Of(findings),
            AuditPage.Of(findings),
            IntervalCasePage.Of(findings),
            SpecimenPage.Of(findings)),
        Question(findings, "do-they-differ", ComparisonPage.Of(findings)),
        Question(findings, "is-it-getting-better", TrendPage.Of(findings)),
        Question(findings, "how-often-to-screen", CadencePage.Of(findings), WhatIfPages.Interval(findings)),
        Question(findings, "is-screening-worth-it", WorthPage.Of(findings)),
        .. findings.Changes is { } changes ? (PageGroup[])[Question(findings, "what-has-changed", ChangePage.Of(changes))] : [],
        new("trust", "How far can the data be trusted?",
        [
            LedgerPage.Of(findings),
            FlowPage.Of(findings),
            CompletenessPage.Of(findings),
        ]),
    ];

    // The pages that an answer rests on, under its question in the same words.
    private static PageGroup Question(Findings findings, string id, params ImmutableArray<Page> pages) =>
        new(id, findings.Answers.Questions.Single(answer => answer.Id == id).Question, pages);
}
