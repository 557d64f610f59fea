using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using CsCheck;
using ScreenStats.Counting.Cubes;
using ScreenStats.Records.PersonLog;
using ScreenStats.Records.PersonLog.Checks;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Records.PersonLog.Spilling;

namespace ScreenStats.Records.Tests.PersonLog;

public class RunCounterTests
{
    [Fact]
    public void Counts_what_the_obvious_counter_counts_whatever_the_threads() =>
        Gen.Select(Programs.Any, Gen.Int[1, 3], Gen.Int[1, 3], Gen.Int[1, 5]).Sample((program, sinks, threads, batch) =>
        {
            var expected = new ObviousCounter(program);
            var counted = program.Count(sinks, threads, batch);
            Text(Tally.FromCells(counted.Cells).Cells).Should().Be(Text(Tally.FromCells(expected.Cells).Cells));
            counted.Removed.Select(row => ((int)row.Record, row.Code, (int)row.First)).Should().Equal(
                expected.Removed.Concat(expected.RemovedSpecimens.Select(row => (row.Record, "duplicate", row.First))));
            Found(counted, CountingDiagnostics.AuditWithoutRun).Should().Be(expected.AuditsWithoutRun);
        }, iter: 4000, print: pair => Text(pair.Item1));

    [Fact]
    public void Gives_the_same_text_for_any_number_of_threads_and_sinks() => Programs.Any.Sample(program =>
    {
        var one = Text(Tally.FromCells(program.Count().Cells).Cells);
        Text(Tally.FromCells(program.Count(sinks: 3, threads: 2, batch: 1).Cells).Cells).Should().Be(one);
    }, iter: 500);

    [Fact]
    public void Counts_the_same_when_rows_go_through_temporary_files_and_are_looked_at_a_few_people_at_a_time() =>
        Gen.Select(Programs.Any, Gen.Int[1, 3], Gen.Int[1, 3], Gen.Bool, Gen.Bool, Gen.Bool).Sample((program, sinks, threads, log, ids, scan) =>
        {
            var bounded = program with { Budget = new MemoryBudget(log ? 0 : 1 << 30, ids ? 0 : 1 << 30, ids ? 0 : 1 << 30, (scan ? 24 : 1 << 20) * LogPieces.BytesOfRow) };
            var counted = bounded.Count(sinks, threads, batch: 2);
            var expected = program.Count();
            Text(Tally.FromCells(counted.Cells).Cells).Should().Be(Text(Tally.FromCells(expected.Cells).Cells));
            counted.Removed.Should().Equal(expected.Removed);
        }, iter: 500, print: drawn => Text(drawn.Item1));

    [Theory]
    [InlineData(30)]
    [InlineData(300)]
    [InlineData(100_000)]
    public void Splits_partitions_that_are_too_large_for_the_bound(int mostRows)
    {
        var start = new DateTime(2026, 3, 2, 8, 0, 0);
        var runs = Enumerable.Range(0, 20_000).Select(at => Run($"p{SmallProgram.Hash(at) % 4000}", start.AddMinutes(at), at % 40 == 0 ? Outcome.Positive : Outcome.Negative)).ToList();
        var program = new SmallProgram(new(), runs, null, null);
        var expected = Text(Tally.FromCells(program.Count().Cells).Cells);
        var bounded = program with { Budget = new MemoryBudget(100_000, 100_000, 100_000, mostRows * LogPieces.BytesOfRow) };
        foreach (var threads in new[] { 1, 3 }) Text(Tally.FromCells(bounded.Count(threads, threads, batch: 100).Cells).Cells).Should().Be(expected);
    }

    [Fact]
    public void Says_that_memory_does_not_hold_the_rows_of_one_person()
    {
        var runs = Enumerable.Range(0, 41).Select(day => Run("p", new DateTime(2026, 3, 2, 8, 0, 0).AddDays(day))).ToList();
        var program = new SmallProgram(new(), runs, null, null) { Budget = new MemoryBudget(0, 0, 0, 40 * LogPieces.BytesOfRow) };
        var count = () => program.Count();
        var found = count.Should().Throw<Counting.Diagnostics.UnusableDataException>().Which.Diagnostics.Single();
        found.Code.Should().Be(Counting.Diagnostics.ReadingDiagnostics.MemoryTooSmall);
        found.Message.Should().Be("One person has more than 40 rows, which do not fit into the memory that was stated. Check that the column person holds a pseudonym of each person; if it does, state more memory.");
        (program with { Budget = new MemoryBudget(0, 0, 0, 41 * LogPieces.BytesOfRow) }).Count().Cells.Participation.Should().Equal(new ParticipationCell(41, 1));
    }

    [Fact]
    public void Random_programs_reach_every_rule()
    {
        var reached = new HashSet<string>();
        var gate = new Lock();
        Programs.Any.Sample(program =>
        {
            var counted = program.Count();
            lock (gate)
            {
                reached.UnionWith(counted.Cells.Screens.Select(cell => $"{cell.Outcome} {cell.FollowUp}"));
                reached.UnionWith(counted.Cells.Conduct.Select(cell => $"{cell.Kind}"));
                reached.UnionWith(counted.Cells.Diagnostics.Select(found => found.Code));
                reached.UnionWith(counted.Cells.Ledger.Where(cell => cell.Rows > 0).Select(cell => $"{cell.Entry}"));
                reached.UnionWith(counted.Cells.Cases.Select(cell => $"case {cell.FoundThrough}"));
                reached.UnionWith(counted.Cells.Repeats.Select(cell => cell.Done == cell.Due ? "repeated" : "not repeated"));
                reached.UnionWith(counted.Cells.Retests.Select(cell => $"retest {cell.Retest}"));
                reached.UnionWith(counted.Cells.Specimens.Select(cell => $"specimen {cell.Reason}"));
                reached.UnionWith(counted.Cells.AuditStrata.Select(cell => $"{cell.Origin}"));
                if (!counted.Cells.IntervalCases.IsEmpty) reached.Add("interval case");
                if (counted.Cells.Cases.Sum(cell => cell.Cases) < counted.Cells.Screens.Where(cell => cell.FollowUp == FollowUp.Confirmed).Sum(cell => cell.Runs)) reached.Add("confirmed, no case");
            }
        }, iter: 1500);
        reached.Should().Contain(
        [
            "Positive Confirmed", "Positive Refuted", "Positive Unresolved", "Positive Pending", "Positive Unverified",
            "Inconclusive Confirmed", "Inconclusive Refuted", "Inconclusive Unresolved", "Inconclusive Pending", "Inconclusive Unverified", "Inconclusive None",
            "Negative None", "Negative Missed", "Negative Agreed", "Negative Unresolved", "Invalid None",
            "ExpiredLot", "ReadOutsideWindow", "BeyondKitContents", "WithinIsolation",
            CountingDiagnostics.Duplicate, CountingDiagnostics.ConflictingScreenId, CountingDiagnostics.PossibleDuplicate,
            CountingDiagnostics.AuditStrataUnexplained, CountingDiagnostics.AuditStrataByName, CountingDiagnostics.NegativesOutsideStrata,
            CountingDiagnostics.AuditOutsideStratum,
            "WholeProgram", "Site", "Patterns", "StatedNumber", "Unexplained",
            CountingDiagnostics.AuditWithoutRun, CountingDiagnostics.ReportBeforeCollection,
            "SetAside", "Duplicate", "ControlRun", "KeptOutSymptomatic", "KeptOutExposed", "Counted",
            "case Positive", "case Inconclusive", "repeated", "not repeated", "interval case", "confirmed, no case",
            "retest Negative", "retest Positive", "retest Inconclusive", "retest Invalid",
            "specimen NotRecorded", "specimen FollowUp", "specimen Audit", "specimen Other",
        ]);
    }

    [Fact]
    public void Does_not_depend_on_the_order_of_rows() =>
        Gen.Select(Programs.DistinctTimes, Gen.Int[1, 1_000_000]).Sample((program, seed) =>
        {
            var shuffled = program with
            {
                Runs = [.. program.Runs.OrderBy(run => SmallProgram.Hash($"{seed} {run}"))],
                Specimens = program.Specimens?.OrderBy(specimen => SmallProgram.Hash($"{seed} {specimen}")).ToList(),
            };
            Text(Tally.FromCells(shuffled.Count(sinks: 2).Cells).Cells).Should().Be(Text(Tally.FromCells(program.Count().Cells).Cells));
        }, iter: 500);

    [Fact]
    public void Sorts_many_runs_of_one_person_that_arrive_in_any_order()
    {
        var days = Enumerable.Range(0, 3000).OrderBy(day => SmallProgram.Hash(day)).ToList();
        var runs = days.Select(day => Run("p", new DateTime(2018, 1, 1, 8, 0, 0).AddDays(day))).ToList();
        var counted = new SmallProgram(new(), runs, null, null).Count(sinks: 3, threads: 2, batch: 7);
        counted.Cells.Gaps.Should().Equal(new GapCell("North", 1, 2999));
        counted.Cells.Participation.Should().Equal(new ParticipationCell(3000, 1));
    }

    [Fact]
    public void Daily_programs_without_audits_have_no_missed_runs() =>
        Programs.EveryDays(1).Sample(program => NoNegativeIsJudged(program), iter: 300);

    [Fact]
    public void Monday_and_Thursday_programs_without_audits_have_no_missed_runs() =>
        Programs.EveryDays(3).Sample(program => NoNegativeIsJudged(program), iter: 300);

    [Fact]
    public void A_positive_on_Thursday_does_not_make_Mondays_negative_a_false_negative()
    {
        var monday = new DateTime(2026, 3, 2, 8, 0, 0);
        var counted = new SmallProgram(
            new(), [Run("p", monday), Run("p", monday.AddDays(3), Outcome.Positive)], [Positive("p", monday.AddDays(3).AddHours(4))], null).Count().Cells;
        counted.Screens.Select(cell => (cell.Outcome, cell.FollowUp)).Should().BeEquivalentTo([(Outcome.Negative, FollowUp.None), (Outcome.Positive, FollowUp.Confirmed)]);
        counted.IntervalCases.Should().BeEmpty();
        counted.Audits.Should().BeEmpty();
    }

    [Fact]
    public void A_stratum_with_more_audited_runs_than_it_is_said_to_hold_is_said()
    {
        var at = new DateTime(2026, 3, 2, 8, 0, 0);
        var settings = new Counting.Programs.ProgramSettings { Audits = new() { Strata = [new() { Name = "plant", Negatives = 1 }] } };
        TestSpecimen[] specimens = [.. new[] { "p", "q" }.Select(person => Positive(person, at.AddHours(1)) with { Reason = SpecimenReason.Audit, Stratum = "plant" })];
        var counted = new SmallProgram(settings, [Run("p", at), Run("q", at)], [.. specimens], null).Count();
        Found(counted, CountingDiagnostics.AuditStratumTooSmall).Should().Be(1);
        counted.Cells.AuditStrata.Should().Equal(new AuditStratumCell("plant", StratumOrigin.StatedNumber, 1));
        Found(new SmallProgram(settings, [Run("p", at), Run("q", at)], [specimens[0]], null).Count(), CountingDiagnostics.AuditStratumTooSmall).Should().Be(0);
    }

    [Fact]
    public void Strata_that_hold_the_same_negative_runs_are_refused_by_name()
    {
        var at = new DateTime(2026, 3, 2, 8, 0, 0);
        var settings = new Counting.Programs.ProgramSettings
        {
            Audits = new() { Strata = [new() { Name = "plant", Sites = ["N*"] }, new() { Name = "office", Lots = ["A1"] }, new() { Name = "rest", Negatives = 10 }] },
        };
        var specimen = Positive("p", at.AddHours(1)) with { Reason = SpecimenReason.Audit, Stratum = "plant" };
        var program = new SmallProgram(settings, [Run("p", at)], [specimen], null);
        var act = () => program.Count();
        var found = act.Should().Throw<Counting.Diagnostics.UnusableDataException>().Which.Diagnostics.Single();
        found.Code.Should().Be(CountingDiagnostics.AuditStrataOverlap);
        found.Message.Should().Contain("\"plant\"").And.Contain("\"office\"").And.NotContain("North").And.NotContain("A1");

        // A positive run in both is nobody's weight, and without an audit nothing is drawn from anything.
        (program with { Runs = [Run("p", at, Outcome.Positive), Run("q", at) with { Lot = "B7" }] }).Count().Cells.Audits.Should().BeEmpty();
        (program with { Specimens = [] }).Count().Cells.AuditStrata.Should().BeEmpty();
    }

    [Fact]
    public void The_first_of_two_rows_with_one_screen_id_is_kept_also_where_the_person_differs()
    {
        var first = Run("p", new DateTime(2026, 3, 2, 8, 0, 0)) with { Id = "s1" };
        var counted = new SmallProgram(new(), [first, first with { Person = "q" }, first, first with { Person = "q" }], null, null).Count();
        counted.Removed.Should().Equal(
            new RemovedRow(Counting.Ledger.ExportKind.Screening, 1, CountingDiagnostics.ConflictingScreenId, 0),
            new RemovedRow(Counting.Ledger.ExportKind.Screening, 2, CountingDiagnostics.Duplicate, 0),
            new RemovedRow(Counting.Ledger.ExportKind.Screening, 3, CountingDiagnostics.ConflictingScreenId, 0));
        counted.Cells.Participation.Should().Equal(new ParticipationCell(1, 1));
    }

    [Fact]
    public void Many_control_swabs_at_the_same_time_are_compared_by_their_whole_hash_first()
    {
        var swab = Run("", new DateTime(2026, 3, 2, 8, 0, 0)) with { Control = ControlExpectation.Negative };
        var runs = Enumerable.Range(0, 2000).Select(at => swab with { Kit = $"k{at % 1000}" }).ToList();
        var counted = new SmallProgram(new(), runs, null, null).Count();
        counted.Removed.Should().HaveCount(1000).And.OnlyContain(row => row.Record == row.First + 1000);
        counted.Cells.Controls.Sum(cell => cell.Runs).Should().Be(1000);
    }

    [Fact]
    public void A_program_without_rows_gives_an_empty_tally()
    {
        var counted = new SmallProgram(new(), [], [], null).Count();
        Tally.FromCells(counted.Cells).FirstDay.Should().BeNull();
        counted.Cells.DataAsOf.Should().BeNull();
    }

    [Fact]
    public void A_column_of_millions_of_levels_is_refused_with_advice()
    {
        var sink = new RunSink(new(), new Vocabularies());
        var row = new RunRow { Person = 1, Lot = LevelLimits.MostLots };
        var act = () => sink.Take([row]);
        act.Should().Throw<Counting.Diagnostics.UnusableDataException>().Which.Diagnostics.Should().ContainSingle()
            .Which.Code.Should().Be(CountingDiagnostics.TooManyLevels);
    }

    [Theory]
    [InlineData(RunCounter.EarliestInstant - 1)]
    [InlineData(RunCounter.LatestInstant + 1)]
    public void An_instant_outside_of_what_the_log_can_hold_is_an_error_of_the_caller(long instant)
    {
        var sink = new RunSink(new(), new Vocabularies());
        var row = new RunRow { Person = 1, Instant = instant };
        var act = () => sink.Take([row]);
        act.Should().Throw<ArgumentOutOfRangeException>();
    }

    [Fact]
    public void Rows_can_be_counted_once_only()
    {
        var counter = new RunCounter(new(), new Vocabularies());
        counter.Complete(null, null!, null, null, 1);
        var act = () => counter.Complete(null, null!, null, null, 1);
        act.Should().Throw<InvalidOperationException>();
    }

    [Fact]
    public void The_moment_of_complete_data_is_the_command_lines_then_the_program_files_then_the_latest_report()
    {
        var collected = new DateTime(2026, 3, 2, 8, 0, 0);
        var specimen = Positive("p", collected) with { Reported = collected.AddHours(30) };
        var program = new SmallProgram(new(), [Run("p", collected)], [specimen], null);
        program.Count().Cells.DataAsOf.Should().Be(collected.AddHours(30));
        program.Count().Cells.ReportingLagHours.Should().Be(30);
        program.Count().Cells.ReportingLagFromData.Should().BeTrue();
        var stated = program with { Settings = new() { DataAsOf = new(new(2026, 4, 1), null) } };
        stated.Count().Cells.DataAsOf.Should().Be(new DateTime(2026, 4, 1));
        (stated with { AsOf = new(new(2026, 5, 1), null) }).Count().Cells.DataAsOf.Should().Be(new DateTime(2026, 5, 1));
        (program with { Specimens = [specimen with { Reported = null }] }).Count().Cells.DataAsOf.Should().Be(collected);
        (program with { Specimens = [specimen with { Reported = null, DateOnly = true, Local = collected.Date }] }).Count().Cells.DataAsOf
            .Should().Be(new DateTime(2026, 3, 2, 23, 59, 59));
    }

    [Fact]
    public void A_stated_moment_without_an_offset_is_in_the_programs_time_zone()
    {
        // 72 hours and a lag of 48 after Monday 08:00+02:00 end on Saturday 08:00+02:00, which is Saturday 06:00 UTC.
        var run = Run("p", new DateTime(2026, 6, 1, 8, 0, 0), Outcome.Positive) with { Offset = 120 };
        FollowUp Of(DateTime asOf) => new SmallProgram(new() { TimeZone = "Europe/Berlin" }, [run], [], new(asOf, null)).Count().Cells.Screens.Single().FollowUp;
        Of(new DateTime(2026, 6, 6, 7, 59, 59)).Should().Be(FollowUp.Pending);
        Of(new DateTime(2026, 6, 6, 8, 0, 0)).Should().Be(FollowUp.Unverified);
    }

    private static void NoNegativeIsJudged(SmallProgram program)
    {
        var cells = Tally.FromCells(program.Count().Cells).Cells;
        cells.Screens.Should().OnlyContain(cell => cell.Outcome != Outcome.Negative || cell.FollowUp == FollowUp.None);
        cells.Audits.Should().BeEmpty();
    }

    private static TestRun Run(string person, DateTime local, Outcome outcome = Outcome.Negative) => new(
        person, local, 0, false, "North", "A1", "(none)", "(none)", outcome, Specimen.Nasal, CollectedBy.Self, false, false, null, null, null, null);

    private static TestSpecimen Positive(string person, DateTime local) => new(
        person, local, 0, false, ConfirmatoryResult.Positive, SpecimenReason.FollowUp, null, false, "(none)");

    private static long Found(CountedExports counted, string code) =>
        counted.Cells.Diagnostics.Where(found => found.Code == code).Sum(found => found.Occurrences);

    private static string Text(SmallProgram program) => string.Join("\n", [program.Settings.Policy.ToString(), program.AsOf?.ToString() ?? "-", .. program.Runs.Select(run => run.ToString()), .. program.Specimens?.Select(specimen => specimen.ToString()) ?? ["no confirmatory"]]);

    /// <summary>Every cube as text, a line a cell: equal texts are equal bytes.</summary>
    internal static string Text(TallyCells cells)
    {
        var text = new StringBuilder();
        Write([cells.SettlingSpecimens]);
        Write(cells.Screens);
        Write(cells.Operators);
        Write(cells.Notable);
        Write(cells.Settlements);
        Write(cells.Persons);
        Write(cells.Participation);
        Write(cells.Cases);
        Write(cells.Gaps);
        Write(cells.Delays);
        Write(cells.Audits);
        Write(cells.AuditStrata);
        Write(cells.AuditProducts);
        Write(cells.IntervalCases);
        Write(cells.Conduct);
        Write(cells.Repeats);
        Write(cells.Retests);
        Write(cells.Specimens);
        Write(cells.Controls);
        Write(cells.Kits);
        Write(cells.Ledger);
        return text.ToString();

        void Write<T>(ImmutableArray<T> of)
        {
            foreach (var cell in of) text.Append(CultureInfo.InvariantCulture, $"{cell}\n");
        }
    }
}
