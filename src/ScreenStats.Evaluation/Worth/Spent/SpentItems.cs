using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence.Rows;
using ScreenStats.Evaluation.Methods;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Shared;
using ScreenStats.Evaluation.Worth.Prices;
using ScreenStats.Evaluation.Worth.Rows;
using ScreenStats.Evaluation.Yield;
using ScreenStats.Statistics.Economics.Yield;

namespace ScreenStats.Evaluation.Worth.Spent;

/// <summary>What the program paid for over the time of its data, item by item.</summary>
internal sealed class SpentItems
{
    private const string NoConfirmatory = "there is no confirmatory export";
    private readonly ImmutableArray<WorthCostItem>.Builder rows = ImmutableArray.CreateBuilder<WorthCostItem>();
    private readonly List<CostItem> items = [];
    private readonly PriceList prices;

    public SpentItems(Tally tally, ProgramSettings settings, YieldFindings yield, EstimateFinding falseAlarmDays, PriceList prices)
    {
        this.prices = prices;
        var cells = tally.Cells;
        var counts = RunCounts.Of(cells.Screens);
        Runs = counts.Runs;
        Cases = cells.HasConfirmatory ? yield.Cases : null;
        FalseAlarmDays = falseAlarmDays;
        Refuted = cells.HasConfirmatory ? counts.Refuted : null;
        AddScreens();
        AddFollowUp(cells, counts);
        if (Specimens(cells, SpecimenReason.Audit) is > 0 and var audits) AddTests("audit-tests", "confirmatory tests of audited negatives", audits);
        AddIsolation(settings.Policy.IsolationDays);
        AddFalseAlarms();
        if (cells.HasConfirmatory && settings.Cadence.IsolateOn == IsolateOn.Screen && settings.Policy.IsolationDays is { } away && counts.PositivesWithoutConclusion > 0)
            AddUnsettled(UnsettledDays = (double)counts.PositivesWithoutConclusion * away);
        Cost = ProgramCost.Of(items);
        Rows = rows.ToImmutable();
    }

    public long Runs { get; }

    /// <summary>Cases found; null without a confirmatory export.</summary>
    public long? Cases { get; }

    /// <summary>Refuted positives; null without a confirmatory export.</summary>
    public long? Refuted { get; }

    /// <summary>Working days that one false alarm costs.</summary>
    public EstimateFinding FalseAlarmDays { get; }

    /// <summary>Days away of positives never settled, the whole isolation time each; 0 where people leave on confirmation, and where the policy does not state how long it is.</summary>
    public double UnsettledDays { get; }

    /// <summary>The sum, as far as prices and numbers are known.</summary>
    public ProgramCost Cost { get; }

    public ImmutableArray<WorthCostItem> Rows { get; }

    private static long Specimens(TallyCells cells, params SpecimenReason[] reasons) => cells.Specimens.Where(cell => reasons.Contains(cell.Reason)).Sum(cell => cell.Specimens * cell.Persons);

    private void AddScreens()
    {
        var runs = new StatedAmount(Runs);
        var whole = prices.Stated(Price.Screen) is not null;
        Add("screens", "screens", prices.ScreenAmount(), runs, whole ? prices.Source(Price.Screen) : prices.KnowsScreen ? "sum of its parts" : "not stated in full: the total", false);
        if (whole) return;
        Add("kits", "test devices", prices.Amount(Price.Kit), runs, Source(Price.Kit), true);
        Add("operators", "operators' time", prices.OperatorAmount(), runs, Source(Price.OperatorMinutes, Price.OperatorHour), true);
        Add("supervision", "supervision", prices.Amount(Price.Supervision), runs, Source(Price.Supervision), true);
        Add("waste", "waste", prices.Amount(Price.Waste), runs, Source(Price.Waste), true);
    }

    // By the run that they followed first; where one specimen follows several runs it counts once, of a positive one before an inconclusive one.
    private void AddFollowUp(TallyCells cells, RunCounts counts)
    {
        if (!cells.HasConfirmatory)
        {
            AddTests("confirmatory-tests", "confirmatory tests after a positive screen", null);
            return;
        }

        long Followed(Outcome outcome) => counts[outcome, FollowUp.Confirmed] + counts[outcome, FollowUp.Refuted] + counts[outcome, FollowUp.Unresolved];
        var all = Specimens(cells, SpecimenReason.FollowUp, SpecimenReason.NotRecorded);
        var positive = Math.Min(all, Followed(Outcome.Positive));
        var inconclusive = Math.Min(all - positive, Followed(Outcome.Inconclusive));
        AddTests("confirmatory-tests", "confirmatory tests after a positive screen", positive);
        if (inconclusive > 0) AddTests("inconclusive-tests", "confirmatory tests after an inconclusive screen", inconclusive);
        if (all - positive - inconclusive is > 0 and var others) AddTests("further-tests", "further confirmatory tests", others);
    }

    private void AddTests(string item, string name, long? tests) =>
        Add(item, name, prices.Amount(Price.ConfirmatoryTest), tests is { } some ? new StatedAmount(some) : null, Source(Price.ConfirmatoryTest), false, NoConfirmatory);

    private void AddIsolation(int? days)
    {
        StatedAmount? units = Cases is { } cases && days is { } each ? new StatedAmount((double)cases * each) : null;
        Add("isolation", "days of isolation of cases found", prices.Amount(Price.IsolationDay), units, Source(Price.IsolationDay), false,
            days is null ? "how long a case is kept away is not stated in the policy" : NoConfirmatory);
    }

    private void AddFalseAlarms()
    {
        StatedAmount? units = Refuted is { } refuted && FalseAlarmDays.Estimate is { } days
            ? new StatedAmount(refuted * days, refuted * (FalseAlarmDays.Lower ?? days), refuted * (FalseAlarmDays.Upper ?? days))
            : Refuted == 0 ? new StatedAmount(0) : null;
        Add("false-alarms", "working days lost to refuted positives", prices.Amount(Price.WorkingDay), units, Source(Price.WorkingDay), false,
            Refuted is null ? NoConfirmatory : "the working days that a false alarm costs are not known");
    }

    private void AddUnsettled(double days) => Add("unsettled-positives", "days away of positives never settled", prices.Amount(Price.WorkingDay), new StatedAmount(days), Source(Price.WorkingDay), false);

    private string Source(params Price[] of) => of.All(prices.Knows) ? string.Join("; ", of.Select(prices.Source).Distinct(StringComparer.Ordinal)) : "";

    private void Add(string item, string name, StatedAmount? price, StatedAmount? units, string source, bool part, string noUnits = "not known")
    {
        // What has no number stands in the sum as something without a price: it is not complete without it.
        if (!part) items.Add(new CostItem(item, units ?? new StatedAmount(1), units is null ? null : price));
        var priced = Of(price, "not stated", MethodNames.Stated);
        var counted = Of(units, noUnits, WorthNotes.ByItem);
        rows.Add(new WorthCostItem
        {
            Item = item,
            Name = name,
            UnitCost = priced,
            Units = counted,
            Cost = price is { } one && units is { } many
                ? new EstimateFinding(one.Value * many.Value, null, one.IsExact && many.IsExact ? null : one.Lower * many.Lower, one.IsExact && many.IsExact ? null : one.Upper * many.Upper, WorthNotes.ByItem, null)
                : EstimateFinding.Undefined(price is null ? "its price is not stated" : noUnits),
            Origin = price is null ? CadenceOrigin.NotKnown : CadenceOrigin.Stated,
            Source = source,
            IsPart = part,
        });
    }

    private static EstimateFinding Of(StatedAmount? amount, string undefined, string method) => amount is not { } known ? EstimateFinding.Undefined(undefined)
        : new EstimateFinding(known.Value, null, known.IsExact ? null : known.Lower, known.IsExact ? null : known.Upper, method, null);
}
