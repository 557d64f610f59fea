using System.Collections.Immutable;
using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth;

namespace ScreenStats.Reporting.Pages.Worth;

/// <summary>Whether screening is worth it.</summary>
internal static class WorthPage
{
    private const string OfTheRule = "screens-per-person";
    private const string OfPools = "real-positives";

    /// <summary>The page.</summary>
    public static Page Of(Findings findings)
    {
        var charts = WorthFigures.Of(findings);
        // The first picture leads the page: which option for how much infection, else cost against effect.
        var (tables, parts) = Parts(findings, findings.Worth, charts.Length > 0 && charts[0].Id == LadderFigures.Ladder ? [WorthFigures.Plane] : []);
        return new(
            "worth", "What it costs, what it gains, and when it pays", findings.Worth,
            "Money alone never decides: whether people are screened, whom a false alarm burdens and who may be sent away are questions of ethics, of consent and of local rules, and belong to those who answer for them. "
            + $"What is counted is what is priced, {Perspective(findings.Worth)}; what is not priced, such as worry, trust or a case taken home, is in no sum. {Discounting(findings.Worth)} "
            + "What an effect is worth is a decision and not an estimate. The figures hold for these prices and for as much infection as in these data, and for one choice over the days looked at: an outbreak, another variant or another device changes them. A figure that is wrong altogether is in no limits.",
            "What each way of screening finds, removes and averts comes from the analysis how often, with the same draws; prices are drawn from their own ranges. Costs and effects are differences from no screening. "
            + "The net benefit is what the effect is worth at the stated value, less the cost; the frontier, the cost of one more effect and the break-evens hold at the central figures, limits and shares come from the draws. A stated range is drawn so that both of its ends are met; where they lie unevenly about the value the mean of the draws lies off it, and means and shares differ from the central figures for this too. No price has a default: what is not stated is left out, and said. All options, draws' limits and lists: in the files.")
        {
            Caution = "A negative screen does not rule out infection. A sum of money is no reason to send a sick person back to work, or to keep anybody under suspicion: who stays away, who must be told and who may come back are set by local rules and by licensed practitioners.",
            Charts = charts,
            Tables = tables,
            Parts = parts,
        };
    }

    private static string Perspective(WorthFindings found) => found.Perspective.Length > 0 ? $"seen from the perspective that is stated ({found.Perspective})" : "and whose costs count is not stated";

    private static string Discounting(WorthFindings found) => found.DiscountRate is null ? "Nothing is discounted, and no amount is converted." : "What falls into later years is discounted at the rate of the program file; no amount is converted.";

    private static (ImmutableArray<TableView> Tables, ImmutableArray<PagePart> Parts) Parts(Findings findings, WorthFindings found, ImmutableArray<string> ofChoice)
    {
        var tables = ImmutableArray.CreateBuilder<TableView>();
        var parts = ImmutableArray.CreateBuilder<PagePart>();
        // What may be seen is decided for the tables of the findings: where something is hidden those stand here as they are.
        var hides = findings.Disclosure is not null;

        void Add(PagePart part, ReadOnlySpan<ITable> whole, ReadOnlySpan<TableView> views)
        {
            var before = tables.Count;
            if (hides) foreach (var table in whole) tables.Add(TableViews.Whole(table));
            else tables.AddRange(views);
            parts.Add(part with { Tables = tables.Count - before });
        }

        // That no pool saves anything is of the choice, though its figure is of what was done.
        string[] ofPools = [.. found.Figures.Where(figure => figure.Measure == OfPools && figure.Basis == found.Judged?.Option).Select(figure => FigurePath.Row("worth.figures", figure.Key))];
        string[] ofRule = [.. found.Figures.Where(figure => figure.Measure == OfTheRule).Select(figure => FigurePath.Row("worth.figures", figure.Key))];
        Add(
            new PagePart("What it did") { Charts = [WorthFigures.Margins], SpeaksOf = ["worth.costs", .. found.Figures.Select(figure => FigurePath.Row("worth.figures", figure.Key)).Except(ofRule).Except(ofPools)] },
            [found.CostTable, found.FigureTable], [WorthViews.Spent(found), WorthViews.Each(found), WorthViews.Margins(found)]);
        parts.Add(new PagePart("What is counted") { SpeaksOf = ["worth.counted"] });
        Add(
            new PagePart("What to choose") { Charts = ofChoice, Words = hides ? "" : WorthRemarks.Choice(found), SpeaksOf = [.. ofPools, .. found.Options.Select(option => FigurePath.Row("worth.options", option.Key) + ".cost")] },
            [found.OptionTable], [WorthViews.Options(findings), WorthViews.Otherwise(findings)]);
        Add(new PagePart("When it turns") { Words = hides ? "" : WorthRemarks.Turns(found) }, [found.TurnTable, found.LadderTable, found.PeriodTable], [WorthViews.Turns(found), LadderViews.Ladder(found), LadderViews.Periods(found)]);
        Add(
            new PagePart("How sure it is") { SpeaksOf = ["worth.swings", "worth.information"], Charts = [WorthFigures.Likely, WorthFigures.Swings] },
            [found.AcceptabilityTable, found.InformationTable, found.SwingTable], [SureViews.Acceptability(found), SureViews.Information(found), SureViews.Swings(findings)]);
        Add(new PagePart("Whom to send away") { SpeaksOf = ["worth.decisionCurve"], Words = hides ? "" : SureViews.Thresholds(found) }, [found.DecisionTable], [SureViews.Decisions(found)]);
        Add(new PagePart("What the rule of frequency would have done") { SpeaksOf = ["worth.rules", "worth.ruleLots", .. ofRule] }, [found.RuleTable], [SureViews.Rules(found)]);
        Add(
            new PagePart("The lists of the field") { SpeaksOf = ["worth.criteria"] }, [found.CriterionTable],
            [
                SureViews.List(found, "wilson-jungner", "The ten criteria for screening of Wilson and Jungner (1968), as far as the data can answer"),
                SureViews.List(found, "cheers-2022", "What a report of an economic evaluation has to state, by the 28 items of CHEERS 2022"),
            ]);
        parts.Add(new PagePart("What one more figure would allow") { SpeaksOf = ["worth.missing"], Items = found.Missing });
        return (tables.ToImmutable(), parts.ToImmutable());
    }
}
