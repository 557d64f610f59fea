using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;

namespace ScreenStats.Counting.Tests.Cubes;

public class TallyTests
{
    private static readonly DateOnly Day = new(2026, 3, 4);
    private static readonly DateOnly Monday = new(2026, 3, 2);

    // One person with a negative and a confirmed positive run, another with an audited negative one.
    private static TallyCells Cells => new()
    {
        Screens = [Screen(Outcome.Negative), Screen(Outcome.Negative, FollowUp.Agreed), Screen(Outcome.Positive, FollowUp.Confirmed)],
        Operators = [Operator(Outcome.Positive, FollowUp.Confirmed), Operator(Outcome.Negative), Operator(Outcome.Negative, FollowUp.Agreed)],
        Notable = [Notable(Outcome.Positive, FollowUp.Confirmed)],
        Persons =
        [
            new(PersonScope.Program, "", null, PersonMeasure.Positivity, 2, 1, 3, 1, 5, 2, 1),
            new(PersonScope.Program, "", null, PersonMeasure.InvalidRuns, 2, 0, 3, 0, 5, 0, 0),
            new(PersonScope.Program, "", null, PersonMeasure.PredictiveValue, 1, 1, 1, 1, 1, 1, 1),
            new(PersonScope.Program, "", null, PersonMeasure.Refuted, 2, 0, 3, 0, 5, 0, 0),
        ],
        Participation = [new(1, 1), new(2, 1)],
        Gaps = [new("North", 0, 1)],
        Cases = [new("North", "A1", Day, Outcome.Positive, 1)],
        Audits = [new("North", "A1", Day, Levels.None, FollowUp.Agreed, 1)],
        AuditStrata = [new(Levels.None, StratumOrigin.WholeProgram, 2)],
        AuditProducts =
        [
            new("", AuditTotal.Persons, "", AuditTotal.Persons, 2),
            .. new[] { AuditTotal.Positives, AuditTotal.Confirmed, AuditTotal.Negatives, AuditTotal.Agreed }
                .Select(total => new AuditProductCell("", AuditTotal.Persons, Levels.None, total, total == AuditTotal.Negatives ? 2 : 1)),
            new(Levels.None, AuditTotal.Positives, Levels.None, AuditTotal.Positives, 1),
            new(Levels.None, AuditTotal.Positives, Levels.None, AuditTotal.Confirmed, 1),
            new(Levels.None, AuditTotal.Positives, Levels.None, AuditTotal.Negatives, 1),
            new(Levels.None, AuditTotal.Confirmed, Levels.None, AuditTotal.Confirmed, 1),
            new(Levels.None, AuditTotal.Confirmed, Levels.None, AuditTotal.Negatives, 1),
            new(Levels.None, AuditTotal.Negatives, Levels.None, AuditTotal.Negatives, 2),
            new(Levels.None, AuditTotal.Negatives, Levels.None, AuditTotal.Agreed, 1),
            new(Levels.None, AuditTotal.Agreed, Levels.None, AuditTotal.Agreed, 1),
        ],
    };

    private static ScreenCell Screen(Outcome outcome, FollowUp followUp = FollowUp.None, long runs = 1, string lot = "A1") =>
        new("North", lot, Day, Specimen.Nasal, CollectedBy.Self, outcome, followUp, runs);

    private static OperatorCell Operator(Outcome outcome, FollowUp followUp = FollowUp.None, long runs = 1) => new(Levels.None, "North", Day, outcome, followUp, runs);

    private static NotableRun Notable(Outcome outcome, FollowUp followUp = FollowUp.None, ControlExpectation? control = null) => new(
        Day.ToDateTime(new TimeOnly(8, 0)), false, "North", "A1", Levels.None, Levels.None, Specimen.Nasal, CollectedBy.Self, outcome, followUp, null, control);

    [Fact]
    public void Cells_that_agree_make_a_tally_in_canonical_order()
    {
        var tally = Tally.FromCells(Cells);
        tally.FirstDay.Should().Be(Day);
        tally.LastDay.Should().Be(Day);
        tally.Cells.Operators.Select(cell => cell.FollowUp).Should().Equal(FollowUp.None, FollowUp.Agreed, FollowUp.Confirmed);
    }

    [Fact]
    public void Equal_cells_are_added_up_and_empty_ones_left_out()
    {
        var cells = Cells;
        var tally = Tally.FromCells(cells with
        {
            AuditProducts = [.. cells.AuditProducts, new("", AuditTotal.Persons, "", AuditTotal.Persons, 1), new("", AuditTotal.Persons, "", AuditTotal.Persons, -1)],
            Screens = [Screen(Outcome.Positive, FollowUp.Confirmed, 2), Screen(Outcome.Positive, FollowUp.Confirmed, -1), Screen(Outcome.Invalid, runs: 0), Screen(Outcome.Negative), Screen(Outcome.Negative, FollowUp.Agreed)],
        });
        tally.Cells.Screens.Should().Equal(cells.Screens);
        tally.Cells.AuditProducts.Should().Equal(cells.AuditProducts);
    }

    [Fact]
    public void Any_order_gives_the_same_tally()
    {
        var cells = Cells;
        var tally = Tally.FromCells(cells with { Screens = [.. cells.Screens.Reverse()], Persons = [.. cells.Persons.Reverse()], Participation = [.. cells.Participation.Reverse()] });
        tally.Cells.Screens.Should().Equal(Tally.FromCells(cells).Cells.Screens);
        tally.Cells.Persons.Should().Equal(cells.Persons);
        tally.Cells.Participation.Should().Equal(cells.Participation);
    }

    [Fact]
    public void No_cells_are_a_tally_too() => Tally.FromCells(new()).FirstDay.Should().BeNull();

    [Fact]
    public void The_ledger_is_checked_where_there_is_one()
    {
        var cells = Cells with { Ledger = [new(ExportKind.Screening, LedgerEntry.Counted, 2), new(ExportKind.Screening, LedgerEntry.SetAside, 0), new(ExportKind.Screening, LedgerEntry.Counted, 1)] };
        Tally.FromCells(cells).Cells.Ledger.Should().Equal(
            new LedgerCell(ExportKind.Screening, LedgerEntry.SetAside, 0), new LedgerCell(ExportKind.Screening, LedgerEntry.Counted, 3));
    }

    public static TheoryData<string, string> Disagreements => new()
    {
        { "ledger", "*ledger (counted)*screens*1 more*" },
        { "operators", "*operators*screens*0 more and 1 fewer*" },
        { "notable", "*notable*screens*1 fewer*" },
        { "audits", "*audits*screens*1 fewer*" },
        { "products", "*auditProducts*screens*1 fewer*" },
        { "audited", "*auditProducts (audited)*audits*1 fewer*" },
        { "strata", "*auditProducts (negative runs)*auditStrata*1 fewer*" },
        { "no products", "*auditProducts*screens*" },
        { "squares", "*auditProducts (sums)*auditProducts (squares)*" },
        { "products turned", "*auditProducts*impossible*" },
        { "persons", "*persons (Program)*screens*" },
        { "site sums", "*persons (Site)*screens*" },
        { "participation", "*participation (runs)*screens*" },
        { "people", "*participation (people)*persons*" },
        { "gaps", "*gaps*participation*" },
        { "cases", "*cases*screens (confirmed)*1 more*" },
        { "repeats", "*repeats*screens*" },
        { "retests", "*retests*screens (positive)*1 more*" },
        { "specimens", "*specimens*ledger (confirmatory, counted)*1 fewer*" },
        { "settling specimens", "settlingSpecimens is 1*0 specimens*" },
        { "empty specimen", "*specimens*impossible*" },
        { "conduct", "*conduct*screens*" },
        { "controls", "*notable (control runs)*controls*" },
        { "kits", "*kits*screens*1 more*" },
        { "settlements", "*settlements*notable*" },
        { "early settlement", "*settlements*impossible*" },
        { "settled negative", "*settlements*impossible*" },
        { "negative count", "*impossible*" },
        { "impossible follow-up", "*screens*impossible*" },
    };

    [Theory]
    [MemberData(nameof(Disagreements))]
    public void Cubes_that_disagree_are_named_with_the_difference_and_no_text_of_the_data(string what, string message)
    {
        var cells = Cells;
        var wrong = what switch
        {
            "ledger" => cells with { Ledger = [new(ExportKind.Screening, LedgerEntry.Counted, 4)] },
            "operators" => cells with { Operators = cells.Operators.RemoveAt(0) },
            "notable" => cells with { Notable = [] },
            "audits" => cells with { Audits = [] },
            "retests" => cells with { Retests = [new("North", "A1", Day, "A1", Outcome.Negative, FollowUp.Confirmed, 2)] },
            "specimens" => cells with { Specimens = [new(SpecimenReason.Audit, 1, 0, 0, 0, 1)], Ledger = [new(ExportKind.Confirmatory, LedgerEntry.Counted, 2)] },
            "settling specimens" => cells with { SettlingSpecimens = 1 },
            "empty specimen" => cells with { Specimens = [new(SpecimenReason.Audit, 0, 0, 0, 0, 1)] },
            "products" => cells with { AuditProducts = cells.AuditProducts.RemoveAt(1) },
            "audited" => cells with { AuditProducts = cells.AuditProducts.RemoveAt(4) },
            "strata" => cells with { AuditStrata = [new(Levels.None, StratumOrigin.WholeProgram, 3)] },
            "no products" => cells with { AuditProducts = [] },
            "squares" => cells with { AuditProducts = cells.AuditProducts.RemoveAt(10) },
            "products turned" => cells with { AuditProducts = cells.AuditProducts.Add(new(Levels.None, AuditTotal.Agreed, "", AuditTotal.Persons, 1)) },
            "persons" => cells with { Persons = cells.Persons.RemoveAt(1) },
            "site sums" => cells with { Persons = cells.Persons.Add(new(PersonScope.Site, "North", null, PersonMeasure.InvalidRuns, 1, 0, 2, 0, 4, 0, 0)) },
            "participation" => cells with { Participation = [new(1, 2)] },
            "people" => cells with { Participation = [new(3, 1)], Gaps = [new("North", 0, 2)] },
            "gaps" => cells with { Gaps = [] },
            "cases" => cells with { Cases = [new("North", "A1", Day, Outcome.Positive, 2)] },
            "repeats" => cells with { Repeats = [new("North", Day, Outcome.Invalid, 1, 1)] },
            "conduct" => cells with { Conduct = [new(ConductKind.ExpiredLot, "North", "A1", Day, 4)] },
            "controls" => cells with { Notable = cells.Notable.Add(Notable(Outcome.Negative, control: ControlExpectation.Negative)) },
            "kits" => cells with { Kits = [new("North", "A1", Day, 4)] },
            "settlements" => cells with { Settlements = [Settled(FollowUp.Refuted)] },
            "early settlement" => cells with { Settlements = [Settled(FollowUp.Confirmed) with { Known = Day.AddDays(-1) }] },
            "settled negative" => cells with { Settlements = [Settled(FollowUp.Confirmed) with { Outcome = Outcome.Negative }] },
            "negative count" => cells with { Delays = [new(DelayKind.RunToSpecimen, "North", 5, false, -1)] },
            _ => cells with { Screens = [Screen(Outcome.Negative, FollowUp.Confirmed)] },
        };
        var act = () => Tally.FromCells(wrong);
        act.Should().Throw<ArgumentException>().WithMessage(message).Which.Message.Should().NotContain("North").And.NotContain("A1");
    }

    [Fact]
    public void Settlements_that_lead_to_what_the_notable_runs_say_are_taken()
    {
        var tally = Tally.FromCells(Cells with { Settlements = [Settled(FollowUp.Confirmed)] });

        tally.AsOf(Day).Screens.Should().Equal(Screen(Outcome.Negative) with { Runs = 2 }, Screen(Outcome.Positive, FollowUp.Pending));
        tally.AsOf(Day.AddDays(1)).Screens.Should().Equal(Screen(Outcome.Negative) with { Runs = 2 }, Screen(Outcome.Positive, FollowUp.Confirmed));
        tally.AsOf(Day.AddDays(1)).Notable.Should().Equal(tally.Cells.Notable);
        tally.AsOf(Day.AddDays(1)).Operators.Should().HaveCount(2).And.Contain(Operator(Outcome.Positive, FollowUp.Confirmed));
    }

    private static SettlementCell Settled(FollowUp followUp)
    {
        var run = Notable(Outcome.Positive, FollowUp.Confirmed);
        return new(run.Minute, run.DateOnly, run.Site, run.Lot, run.Kit, run.Operator, run.Specimen, run.Collection, run.Outcome,
            Day.AddDays(1), FollowUp.Pending, null, followUp, run.MinutesToSpecimen, 1);
    }

    [Fact]
    public void A_builder_adds_up_what_it_is_given_one_by_one()
    {
        var builder = new TallyBuilder();
        foreach (var cell in Cells.Screens) builder.Add(cell);
        foreach (var cell in Cells.Operators) builder.Add(cell);
        foreach (var cell in Cells.Participation) builder.Add(cell);
        foreach (var cell in Cells.Persons) builder.Add(cell);
        foreach (var run in Cells.Notable) builder.Add(run);
        foreach (var cell in Cells.Gaps) builder.Add(cell);
        foreach (var cell in Cells.Cases) builder.Add(cell);
        foreach (var cell in Cells.Audits) builder.Add(cell);
        foreach (var cell in Cells.AuditStrata) builder.Add(cell);
        foreach (var cell in Cells.AuditProducts) builder.Add(cell);
        for (var i = 0; i < 5; i++) builder.Add(new DelayCell(DelayKind.RunToSpecimen, "North", 5, false, 1));
        builder.Build(new()).Cells.Delays.Should().Equal(new DelayCell(DelayKind.RunToSpecimen, "North", 5, false, 5));
    }

    [Fact]
    public void Sums_by_week_are_checked_from_Monday()
    {
        var cells = Cells;
        var weekly = cells.Persons.Select(cell => cell with { Scope = PersonScope.Week, PeriodStart = Monday });
        Tally.FromCells(cells with { Persons = [.. cells.Persons, .. weekly] }).Cells.Persons.Should().HaveCount(8);
    }
}
