using System.Collections.Immutable;
using System.Globalization;
using ScreenStats.Statistics.Cadence.Correlation;
using ScreenStats.Statistics.Numerics;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Statistics.Tests.Cadence.Correlation;

public sealed class SerialTestFitTests
{
    private static readonly SerialTests Letter = SerialTests.AntigenLetter2022;

    [Fact]
    public void Every_cell_of_the_letter_and_every_sum_of_cells_is_met()
    {
        var fit = SerialTestFit.Of(Letter, new SerialTestOptions { Leavers = LeaverAssumption.AllFound });
        Mismatches.ShouldBeNone(ReferenceTable.Load("serial-cells"), row =>
        {
            var cells = Letter.Cells.Where(cell => cell.Group == row.Text("group") && cell.Day >= row.Count("from") && cell.Day <= row.Count("to") && cell.Tests == row.Count("tests")).ToList();
            var (positives, infected) = (cells.Sum(cell => cell.Positives), cells.Sum(cell => cell.Infected));
            (positives, infected).Should().Be((row.Count("positives"), row.Count("infected")), row.Id);
            var limits = ProportionInterval.ClopperPearson(positives, infected).Interval!.Value;
            var beside = fit.Cells.Single(cell => cell.Cell == cells[0]);
            return new[]
            {
                row.Has("share") ? row.Mismatch("share", cells.Count == 1 ? beside.Observed.Value : (double)positives / infected) : null,
                row.Has("lower") ? row.Mismatch("lower", limits.Lower) ?? row.Mismatch("upper", limits.Upper) : null,
                row.Has("independent") ? row.Mismatch("independent", beside.Independent) : null,
            };
        });
        Letter.Cells.Should().HaveCount(34);
    }

    [Fact]
    public void An_own_likelihood_and_optimiser_find_the_same_maximum() => Mismatches.ShouldBeNone(ReferenceTable.Load("serial-fits"), row =>
    {
        var fit = SerialTestFit.Of(Table(row.Text("table")), Options(row));
        var height = row.Number("likelihood");

        // The row's limits take cells as of separate people: the same fall of the profile at another confidence, where there is such a one.
        var confidence = 1 - TailProbability.Normal(Quantile.Normal(0.95) / Math.Sqrt(fit.SharedPeopleFactor));
        var limited = row.Has("lower") && confidence < 1 - 1e-12;
        var plain = limited ? SerialTestFit.Of(Table(row.Text("table")), Options(row) with { Confidence = confidence }) : fit;

        // The other optimiser stops a little short along flat directions; higher is better. Where the profile is flat the place of its top is known less well than its height.
        var flat = fit.Correlation.Value is { } own && Math.Abs(own - row.Number("correlation")) < 0.02;
        return
        [
            fit.LogLikelihood - height is >= -1e-4 and <= 0.01 ? null : $"{row.Id}: likelihood {fit.LogLikelihood} instead of {height}",
            flat ? null : row.Mismatch("correlation", fit.Correlation.Value),
            limited ? row.Mismatch("lower", plain.Correlation.Lower) : null,
            limited ? row.Mismatch("upper", plain.Correlation.Upper) : null,
        ];
    });

    [Fact]
    public void A_known_correlation_is_found_again_in_simulated_tables()
    {
        foreach (var group in ReferenceTable.Load("serial-tables").GroupBy(row => row.Id[..row.Id.LastIndexOf('-')]))
        {
            var truth = group.First().Number("truth");
            var fits = group.Select(row => SerialTestFit.Of(Table(row.Text("table")), Options(row))).ToList();
            var covered = fits.Count(fit => fit.Correlation.Interval!.Value.Contains(truth));
            TestContext.Current.SendDiagnosticMessage($"{group.Key}: {fits.Average(fit => fit.Correlation.Value):F3}, covered {covered} of {fits.Count}, factor {fits[0].SharedPeopleFactor:F2}, odds {fits[0].StayingOddsRatio}");
            if (fits.Count == 1)
            {
                // Limits at the confidence of four standard errors, and near in themselves.
                var wide = SerialTestFit.Of(Table(group.First().Text("table")), Options(group.First()) with { Confidence = 0.99993666 });
                wide.Correlation.Interval!.Value.Contains(truth).Should().BeTrue(group.Key);
                wide.Correlation.Value.Should().BeApproximately(truth, 0.05, group.Key);
                if (wide.StayingOddsRatio is { } odds) odds.Should().BeInRange(group.First().Number("odds") * 0.8, group.First().Number("odds") * 1.25);
            }
            else
            {
                ((double)covered / fits.Count).Should().BeGreaterThan(0.95 - (4 * Math.Sqrt(0.95 * 0.05 / fits.Count)), group.Key);
            }
        }
    }

    [Fact]
    public void The_letter_leaves_open_how_far_misses_repeat_and_the_bounds_say_so()
    {
        var bounds = SerialTestFit.Bounds(Letter);
        bounds.Fits.Should().HaveCount(6);
        bounds.Estimates!.Value.Lower.Should().BeApproximately(0.143, 0.002, "all leavers found and some recovered: little is left to repeat");
        bounds.Estimates.Value.Upper.Should().BeGreaterThan(0.98, "nobody recovered: all that later tests do not find is put on the person");
        bounds.Limits!.Value.Lower.Should().Be(0);
        bounds.Limits.Value.Upper.Should().Be(SerialTestFit.HighestCorrelation);
        foreach (var fit in bounds.Fits)
        {
            var day0 = fit.Cells.Single(cell => cell.Cell is { Group: "without symptoms", Day: 0, Tests: 3 });
            if (fit.Options.Leavers != LeaverAssumption.AllFound) day0.Fitted.Should().BeLessThan(day0.Independent!.Value - 0.15, "independence promises 89 %, and 56 % were seen");
        }
    }

    [Fact]
    public void Recovery_is_taken_from_who_starts_a_test_later()
    {
        var fit = SerialTestFit.Of(Letter, new SerialTestOptions { Leavers = LeaverAssumption.AsStayers });
        fit.Recoveries.Single(recovery => recovery.Day == 0).StillInfected.Should().BeApproximately(96 / 140.0, 1e-15, "34 and 62 start on day 2; 89 and 51 of day 0 were tested on it");
        SerialTestFit.Of(Letter, new SerialTestOptions { Ends = EndAssumption.NobodyRecovers, Leavers = LeaverAssumption.AllFound }).Recoveries.Should().OnlyContain(recovery => recovery.StillInfected == 1);
    }

    [Fact]
    public void Names_and_order_of_groups_do_not_matter() => Gen.Select(Gen.Long[5, 60], Gen.Long[0, 30], Gen.Long[0, 30], Gen.Int[0, 5]).Sample(
        (n, x, y, leave) =>
        {
            SerialCell[] a = [new("a", 0, 1, Math.Min(x, n), n), new("a", 0, 2, Math.Min(x, n - Math.Min(n, leave)), n - Math.Min(n, leave)), new("a", 2, 1, Math.Min(y, n), n)];
            SerialCell[] b = [new("b", 0, 1, 9, 30), new("b", 0, 2, 14, 28), new("b", 2, 1, 12, 20)];
            var options = new SerialTestOptions { Leavers = LeaverAssumption.AsStayers, Ends = EndAssumption.NobodyRecovers };
            var once = SerialTestFit.Of(SerialTests.Of([.. a, .. b], 2), options);
            var turned = SerialTestFit.Of(SerialTests.Of([.. b.Reverse(), .. a.Select(cell => new SerialCell("z", cell.Day, cell.Tests, cell.Positives, cell.Infected))], 2), options);
            return Math.Abs(once.LogLikelihood - turned.LogLikelihood) < 1e-5 && once.Correlation.Value is >= 0 and <= SerialTestFit.HighestCorrelation
                && once.Correlation.Lower <= once.Correlation.Value && once.Correlation.Value <= once.Correlation.Upper && once.Cells.All(cell => cell.Fitted is >= 0 and <= 1);
        }, iter: 20);

    [Fact]
    public void Tables_that_say_nothing_say_so()
    {
        var single = SerialTestFit.Of(SerialTests.Of([new SerialCell("all", 0, 1, 3, 10)], 2), new SerialTestOptions());
        single.Correlation.Reason.Should().Be(UndefinedReason.NoRepeatedTests);
        single.Sensitivities.Single().Value.Should().BeApproximately(0.3, 1e-6);
        SerialTestFit.Bounds(SerialTests.Of([new SerialCell("all", 0, 1, 0, 0)], 2)).Estimates.Should().BeNull();
        var nobody = SerialTestFit.Of(SerialTests.Of([new SerialCell("all", 0, 1, 0, 10), new SerialCell("all", 0, 2, 0, 10)], 2), new SerialTestOptions { Leavers = LeaverAssumption.AsStayers });
        nobody.Correlation.Interval!.Value.Should().Be(new Interval(0, SerialTestFit.HighestCorrelation), "nobody was ever positive: any correlation does");
    }

    [Fact]
    public void Figures_outside_their_domain_are_refused_by_name()
    {
        var calls = new (Action Call, string Name)[]
        {
            (() => _ = new SerialCell("a", -1, 1, 0, 1), "day"), (() => _ = new SerialCell("a", 0, 0, 0, 1), "tests"), (() => _ = new SerialCell("a", 0, 1, 2, 1), "positives"),
            (() => _ = new SerialCell("a", 0, 1, 0, -1), "infected"), (() => SerialTests.Of([], 2), "cells"), (() => SerialTests.Of([new SerialCell("a", 0, 2, 0, 1)], 2), "cells"),
            (() => SerialTests.Of([new SerialCell("a", 0, 1, 0, 1), new SerialCell("a", 0, 2, 0, 3)], 2), "cells"), (() => SerialTests.Of([new SerialCell("a", 0, 1, 0, 1)], 0), "gapDays"),
            (() => SerialTestFit.Of(Letter, new SerialTestOptions { Confidence = 1 }), "Confidence"), (() => SerialTestFit.Of(Letter, new SerialTestOptions { Leavers = (LeaverAssumption)9 }), "Leavers"),
            (() => SerialTestFit.Of(Letter, new SerialTestOptions { Ends = (EndAssumption)9 }), "Ends"),
        };
        foreach (var (call, name) in calls) call.Should().Throw<ArgumentOutOfRangeException>().WithParameterName(name);
    }

    internal static SerialTestOptions Options(ReferenceRow row) =>
        new() { Ends = Enum.Parse<EndAssumption>(row.Text("ends")), Leavers = Enum.Parse<LeaverAssumption>(row.Text("leavers")) };

    internal static SerialTests Table(string text) => SerialTests.Of(
        [
            .. text.Split(';').SelectMany(row =>
            {
                var (head, cells) = (row.Split(':')[0].Split('@'), row.Split(':')[1].Split('|'));
                return cells.Select((cell, k) => cell.Split('/') is var parts ? new SerialCell(
                    head[0], int.Parse(head[1], CultureInfo.InvariantCulture), k + 1,
                    long.Parse(parts[0], CultureInfo.InvariantCulture), long.Parse(parts[1], CultureInfo.InvariantCulture)) : default);
            }),
        ],
        2);
}
