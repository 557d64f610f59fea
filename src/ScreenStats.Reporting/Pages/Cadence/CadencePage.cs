using System.Collections.Immutable;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Cadence;
using ScreenStats.Evaluation.Cadence.Rows;

namespace ScreenStats.Reporting.Pages.Cadence;

/// <summary>How often to screen.</summary>
internal static class CadencePage
{
    /// <summary>The page.</summary>
    public static Page Of(Findings findings)
    {
        var found = findings.Cadence;
        var (tables, parts) = Parts(findings, found);
        return new(
            "cadence", "What each way of screening gives and costs", found,
            "Whether the next weeks will be like those of the data: more infection outside, another variant or another device changes every figure. Limits carry the uncertainty of the assumptions, not what luck makes of a single quarter, and not an assumption that is wrong altogether. "
            + "The model knows averages: it does not see who works beside whom, who avoids the screen because of symptoms, or who would behave otherwise after a negative one. People who were never screened at all are in none of its figures, though they work beside the others; due screens are taken to be missed by chance, while in truth weeks away come together and sites differ, so that somewhat less is found. What a missed case costs, and what a false alarm does to people, is no figure of it.",
            "For each option the chance that a screen finds an infection by each day of its course, and the share of the infectious time that falls after isolation, are computed exactly for the schedule, the delays, the participation and repeated misses in the same person. "
            + "Each uncertain assumption is drawn from its range, the same draw for all options, so that differences between options are paired, and independently of the other assumptions: where two go together, as the beginning of the detectable and of the infectious time may, limits are too wide, most of all those of what is caught before it can be passed on. Limits hold the middle 95 % of the draws. "
            + "A step is the difference between neighbouring options; the option chosen is the one with the most infectious days removed after the price stated for screens. All options and measures, and both bounds where nothing states how much is brought in: in the files.")
        {
            Caution = "A negative screen does not rule out infection, however often it is repeated. How long somebody stays away, who must be told and who may come back are set by local rules and by licensed practitioners: they come before any figure here.",
            Charts = CadenceFigures.Of(findings),
            Tables = tables,
            Parts = parts,
        };
    }

    private static (ImmutableArray<TableView> Tables, ImmutableArray<PagePart> Parts) Parts(Findings findings, CadenceFindings found)
    {
        var tables = ImmutableArray.CreateBuilder<TableView>();
        var parts = ImmutableArray.CreateBuilder<PagePart>();
        // What may be seen is decided for the tables of the findings: where something is hidden those stand here as they are.
        var hides = findings.Disclosure is not null;
        var gainKnown = found.Outcomes.Any(outcome => outcome is { Measure: CadenceMeasure.ShareRemoved, Figure.Estimate: not null });

        void Add(PagePart part, params ReadOnlySpan<TableView> views)
        {
            tables.AddRange(views);
            parts.Add(part with { Tables = views.Length });
        }

        var every = new PagePart("Every way of screening")
        {
            Words = gainKnown ? "Infectious days are calendar days outside isolation, days off included. Those removed hold the days of infections averted: both are one benefit, seen twice." : "",
        };
        if (hides) Add(every, TableViews.Whole(found.OutcomeTable));
        else if (found.LeadingBasis == CadenceBasis.AllBroughtIn && gainKnown) Add(every, CadenceViews.Gives(found), CadenceViews.Asks(found), CadenceViews.Otherwise(found, CadenceBasis.AllInside));
        else Add(every, CadenceViews.Gives(found), CadenceViews.Asks(found));
        if (!gainKnown) parts.Add(Missing(found));
        Add(new PagePart("What each step adds") { SpeaksOf = ["cadence.steps"] }, hides ? TableViews.Whole(found.StepTable) : CadenceViews.Steps(found));
        Add(new PagePart("How sure the choice is") { SpeaksOf = ["cadence.choices"] }, hides ? TableViews.Whole(found.ChoiceTable) : CadenceViews.Choices(found));
        Add(new PagePart("What it rests on"), hides ? TableViews.Whole(found.AssumptionTable) : CadenceViews.Assumptions(found));
        Add(new PagePart("What matters most") { SpeaksOf = ["cadence.swings"], Charts = [CadenceFigures.Swings] }, hides ? TableViews.Whole(found.SwingTable) : CadenceViews.Swings(found));
        Add(new PagePart("What the program really did") { SpeaksOf = ["cadence.adherence"], Charts = [CadenceFigures.Gaps] }, hides ? TableViews.Whole(found.AdherenceTable) : CadenceViews.Adherence(found));
        Add(new PagePart("By how much infection there is") { SpeaksOf = ["cadence.ranges", "cadence.recent"] }, TableViews.Whole(found.RangeTable));
        if (!hides && Incidence(found) is { } incidence) parts.Add(incidence with { SpeaksOf = ["cadence.assumptions[incidence]", "cadence.assumptions[found-per-person-day]"] });
        if (gainKnown) parts.Add(Missing(found));
        return (tables.ToImmutable(), parts.ToImmutable());
    }

    private static PagePart Missing(CadenceFindings found) => new("What one more figure would allow") { Items = found.Missing };

    /// <summary>How the incidence came about, and what it is not.</summary>
    private static PagePart? Incidence(CadenceFindings found) => found.Assumptions.FirstOrDefault(row => row.Assumption == "incidence")?.Origin switch
    {
        CadenceOrigin.Data => new PagePart("How much infection there is")
        {
            Words = "New infections are counted by person-day: cases found, divided by the person-days in which they could have been found. A gap between two screens of a person counts for as much as an infection in it would have been found by the screen that ended it, "
                + "with the course of the infection, the accuracy of the screen and the positives never followed up; the cases found alone would be too few. It is not the share of people infected at one time (prevalence), which is larger the longer an infection lasts.",
        },
        CadenceOrigin.Stated => new PagePart("How much infection there is")
        {
            Words = "New infections by person-day are taken from the program file, not from the cases found. They are not the share of people infected at one time (prevalence), which is larger the longer an infection lasts.",
        },
        CadenceOrigin.NotKnown => new PagePart("How much infection there is")
        {
            Words = "How many new infections there are by person-day is not known here. Cases found by person-day are a lower bound, since some infections come and go between two screens. A prevalence is no substitute: it is larger the longer an infection lasts.",
        },
        _ => null,
    };
}
