using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.WhatIf.Grids;
using ScreenStats.Statistics.Accuracy;

namespace ScreenStats.Browser.Tests;

/// <summary>The controls that ask "what if": what they show is what the library prints, and everybody can use them.</summary>
public sealed class WhatIfTests(SampleReport report)
{
    private const string Prevalence = "#what-if-positive-prevalence";
    private const string Sensitivity = "#what-if-positive-sensitivity";

    // Types numbers into the controls of a what-if, one place after the other, and reads each figure that is shown.
    private const string Walk = """
        ([view, ids, places]) => { const box = document.getElementById('what-if-' + view).closest('section').querySelector('.what-if');
            return places.map(place => { ids.forEach((id, index) => { const input = document.getElementById('what-if-' + view + '-' + id); input.value = place[index]; input.dispatchEvent(new Event('input')); });
                return [...box.querySelectorAll('.said b')].map(one => one.dataset.figure + ': ' + one.textContent); }); }
        """;

    [Fact]
    public async Task What_it_shows_of_positives_at_hundreds_of_places_is_what_the_library_prints()
    {
        var random = new Random(20261126);
        double[][] places =
        [
            [0.01, 80, 99.9], [0.001, 20, 80], [50, 100, 99.99], [0.6, 79.9, 99.75],
            .. Enumerable.Range(0, 400).Select(_ => new[]
            {
                Rounded(0.001 * Math.Pow(50_000, random.NextDouble()), 4), Rounded(20 + (80 * random.NextDouble()), 4), Rounded(100 - (0.01 * Math.Pow(2_000, random.NextDouble())), 6),
            }),
        ];
        await using var opened = await report.Open(View.Desk);
        var seen = await opened.Page.EvaluateAsync<string[][]>(Walk, new object[] { "positive", new[] { "prevalence", "sensitivity", "specificity" }, places });
        var (shown, alike) = (0, 0);
        for (var index = 0; index < places.Length; index++)
        {
            var (prevalence, sensitivity, specificity) = (places[index][0] / 100, places[index][1] / 100, places[index][2] / 100);
            var expected = new ExpectedResults(sensitivity, specificity, prevalence, 10_000);
            string[] exact =
            [
                "prevalence: " + Share(prevalence), "sensitivity: " + Share(sensitivity), "specificity: " + Share(specificity),
                "true-positives: " + Number(expected.TruePositives), "false-positives: " + Number(expected.FalsePositives), "missed: " + Number(expected.FalseNegatives),
                "positive-predictive-value: " + Share(PredictiveValue.Positive(sensitivity, specificity, prevalence).Value!.Value),
                "negative-predictive-value: " + Share(PredictiveValue.Negative(sensitivity, specificity, prevalence).Value!.Value),
            ];
            seen[index].Select(one => one.Split(':')[0]).Should().Equal(exact.Select(one => one.Split(':')[0]));
            for (var figure = 0; figure < exact.Length; figure++)
            {
                shown++;
                if (seen[index][figure] == exact[figure]) alike++;
                else LastDigitsApart(seen[index][figure], exact[figure]).Should().BeLessThan(1.01, $"{seen[index][figure]} for {exact[figure]} at {string.Join(", ", places[index])}");
            }
        }

        shown.Should().BeGreaterThan(3_000);
        ((double)alike / shown).Should().BeGreaterThan(0.995, "a last digit differs only where the figure lies between two printed ones");
    }

    [Fact]
    public async Task What_it_shows_of_intervals_is_what_the_library_prints()
    {
        var whatIf = report.Findings.WhatIf.Interval;
        var grids = whatIf.Grids.ToDictionary(grid => grid.Id, StringComparer.Ordinal);
        var random = new Random(1126);
        double[][] places =
        [
            .. whatIf.Outcomes.Select(row => new[] { row.DaysBetweenScreens, Rounded(row.Sensitivity!.Value * 100, 8), Rounded(row.Specificity * 100, 8) }),
            .. Enumerable.Range(0, 200).Select(_ => new[] { random.Next(1, 29), Rounded(20 + (80 * random.NextDouble()), 4), Rounded(100 - (0.01 * Math.Pow(2_000, random.NextDouble())), 6) }),
        ];
        await using var opened = await report.Open(View.Desk);
        var seen = await opened.Page.EvaluateAsync<string[][]>(Walk, new object[] { "interval", new[] { "days-between-screens", "sensitivity", "specificity" }, places });
        for (var index = 0; index < places.Length; index++)
        {
            var (days, sensitivity, specificity) = (places[index][0], places[index][1] / 100, places[index][2] / 100);
            var exact = index < whatIf.Outcomes.Length ? whatIf.Outcomes[index] : null;
            seen[index].Should().Equal(
            [
                FormattableString.Invariant($"days-between-screens: {days}"), "sensitivity: " + Share(sensitivity),
                "detection: " + Share(exact?.Detection ?? grids["detection"].At(days, sensitivity)),
                "removed: " + Share(exact?.Removed ?? grids["removed"].At(days, sensitivity)),
                "caught: " + Share(exact?.Caught ?? grids["caught"].At(days, sensitivity)),
                "screens: " + Number(exact?.Screens ?? grids["screens"].At(days)),
                "false-alarms: " + Number(exact?.FalseAlarms ?? grids["false-alarms"].At(days, specificity)),
                "specificity: " + Share(specificity),
            ], string.Join(", ", places[index]));
        }
    }

    [Fact]
    public async Task It_starts_at_the_figures_of_the_program_and_says_what_stands_above_it()
    {
        await using var opened = await report.Open(View.Desk);
        var said = await opened.Ask<string[]>("() => [...document.querySelectorAll('.what-if .said')].map(one => one.textContent)");
        said.Should().Equal(
            report.Findings.WhatIf.Positive.Sentences[0].Text, string.Join(' ', report.Findings.WhatIf.Interval.Sentences.Take(2).Select(sentence => sentence.Text)));
        var known = await opened.Ask<string>("() => document.getElementById('what-if-positive-sensitivity-known').textContent");
        var start = report.Findings.WhatIf.Positive.Starts.First(one => one.Measure == "sensitivity");
        known.Should().Contain(Share(start.Value)).And.Contain(Share(start.Upper!.Value)).And.Contain(start.Source);
    }

    [Fact]
    public async Task The_keyboard_moves_it_and_brings_it_back()
    {
        await using var opened = await report.Open(View.Desk);
        var said = opened.Page.Locator(".what-if").First.Locator(".said");
        var first = await said.TextContentAsync();
        await opened.Page.Locator(Prevalence).FocusAsync();
        await opened.Page.Keyboard.PressAsync("Tab");
        (await opened.Ask<string>("() => document.activeElement.getAttribute('aria-label')")).Should().Be("Prevalence, slider");
        await opened.Page.Keyboard.PressAsync("ArrowRight");
        var moved = await said.TextContentAsync();
        moved.Should().NotBe(first);
        (await opened.Ask<string>("() => document.activeElement.getAttribute('aria-valuetext')")).Should().Be(await opened.Page.Locator(Prevalence).InputValueAsync() + " %");
        await opened.Page.WaitForFunctionAsync("text => document.querySelector('.what-if .heard').textContent === text", moved);
        var back = opened.Page.GetByRole(Microsoft.Playwright.AriaRole.Button, new() { Name = "Back to the start" }).First;
        (await back.GetAttributeAsync("aria-pressed")).Should().Be("false");
        await back.FocusAsync();
        await opened.Page.Keyboard.PressAsync("Enter");
        (await said.TextContentAsync()).Should().Be(first);
        (await back.GetAttributeAsync("aria-pressed")).Should().Be("true");
        var device = report.Findings.WhatIf.Positive.Starts.First(start => start.Name != "this program" && start.Measure == "sensitivity");
        await opened.Page.GetByRole(Microsoft.Playwright.AriaRole.Button, new() { Name = device.Name + ", as stated" }).First.ClickAsync();
        (await opened.Page.Locator(Sensitivity).InputValueAsync()).Should().Be(Rounded(device.At * 100, 8).ToString(System.Globalization.CultureInfo.InvariantCulture));
        opened.Complaints.Should().BeEmpty();
        opened.Requests.Should().Equal(report.Address);
    }

    [Fact]
    public async Task What_lies_outside_or_is_no_number_never_becomes_a_figure()
    {
        await using var opened = await report.Open(View.Desk);
        var (field, said) = (opened.Page.Locator(Prevalence), opened.Page.Locator(".what-if").First.Locator(".said"));
        var first = await said.TextContentAsync();
        await field.FillAsync("80");
        (await field.GetAttributeAsync("aria-invalid")).Should().Be("true");
        (await said.TextContentAsync()).Should().Be(first, "nothing is said of what is outside");
        await field.BlurAsync();
        (await field.InputValueAsync()).Should().Be("50", "it goes to the nearest end");
        (await field.GetAttributeAsync("aria-invalid")).Should().BeNull();
        (await said.TextContentAsync()).Should().Contain("prevalence of 50.0 %");
        await field.FillAsync("");
        await field.BlurAsync();
        (await field.InputValueAsync()).Should().Be("50");
        var days = opened.Page.Locator("#what-if-interval-days-between-screens");
        await days.FillAsync("2.4");
        await days.BlurAsync();
        (await days.InputValueAsync()).Should().Be("2", "days are whole");
    }

    [Theory]
    [InlineData("desk")]
    [InlineData("phone")]
    [InlineData("narrowest")]
    public async Task Every_control_is_named_large_enough_and_within_the_page(string view)
    {
        await using var opened = await report.Open(View.Named(view));
        var bad = await opened.Ask<string[]>("""
            () => [...document.querySelectorAll('.what-if input, .what-if button')].filter(one => { const place = one.getBoundingClientRect();
                return place.height < 24 || place.width < 24 || place.left < 0 || place.right > document.documentElement.clientWidth || !(one.labels?.length || one.getAttribute('aria-label') || one.textContent); }).map(one => one.outerHTML)
            """);
        bad.Should().BeEmpty();
        (await opened.Ask<int>("() => document.querySelectorAll('.what-if input').length")).Should().Be(12);
        (await opened.Ask<string[]>("() => [...document.querySelectorAll('.what-if output')].map(one => one.getAttribute('aria-live')).filter(live => live === 'polite')")).Should().HaveCount(2, "only what has come to rest is heard");
    }

    [Fact]
    public async Task Without_scripts_and_on_paper_there_are_the_tables_and_no_dead_control()
    {
        await using var opened = await report.Open(View.Desk with { Scripts = false });
        (await opened.Ask<int>("() => [...document.querySelectorAll('.what-if')].filter(one => one.checkVisibility() || one.querySelector('input, button, output')).length")).Should().Be(0);
        var rows = await opened.Ask<int[]>("() => ['what-if-positive', 'what-if-interval'].map(id => document.getElementById(id).closest('section').querySelectorAll('tbody tr').length)");
        rows.Should().AllSatisfy(count => count.Should().BeGreaterThan(15));
        await using var printed = await report.Open(View.Desk);
        await printed.Page.EmulateMediaAsync(new() { Media = Microsoft.Playwright.Media.Print });
        (await printed.Ask<int>("() => [...document.querySelectorAll('.what-if')].filter(one => one.checkVisibility()).length")).Should().Be(0);
    }

    [Fact]
    public void Its_data_are_light()
    {
        var page = File.ReadAllText(report.File);
        var data = System.Text.RegularExpressions.Regex.Matches(page, "<div class=\"what-if\".*?</div>", System.Text.RegularExpressions.RegexOptions.Singleline).Select(match => match.Length).ToImmutableArray();
        data.Should().HaveCount(2);
        data.Sum().Should().BeLessThan(150_000);
    }

    private static double Rounded(double value, int decimals) => (double)Math.Round((decimal)value, decimals);

    private static string Share(double value) => Rounding.Print(Cell.Number(value), Unit.Proportion);

    private static string Number(double value) => Rounding.Print(Cell.Number(value), Unit.Ratio);

    // How far two printed figures are apart, in units of the last digit of the second.
    private static double LastDigitsApart(string one, string other)
    {
        static double Value(string text) => double.Parse(text.Split(": ")[1].Split(' ')[0], System.Globalization.NumberStyles.Float | System.Globalization.NumberStyles.AllowThousands, System.Globalization.CultureInfo.InvariantCulture);
        var digits = other.Split(": ")[1].Split(' ')[0];
        var decimals = digits.Contains('.', StringComparison.Ordinal) ? digits.Length - digits.IndexOf('.', StringComparison.Ordinal) - 1 : 0;
        return Math.Abs(Value(one) - Value(other)) * Math.Pow(10, decimals);
    }
}
