using System.Globalization;
using ScreenStats.Statistics.Proportions;

namespace ScreenStats.Benchmarks;

/// <summary>
/// How often the 95 % intervals hold the true rate, exactly: every method, every number of trials from 5 to 500, every rate from 0.001 to 0.5 by 0.001.
/// Run by hand; its result is committed as tests/reference/studies/coverage-study.csv, and a test recomputes a part of it.
/// </summary>
internal static class CoverageStudy
{
    public static int Run(string file)
    {
        var lines = new string[496];
        Parallel.For(5, 501, trials => lines[trials - 5] = string.Concat(IntervalMethods.All.Select(method => Row(method, trials))));
        File.WriteAllText(file, "method,trials,mean_coverage,least_coverage,rate_of_least,mean_width\n" + string.Concat(lines));
        return 0;
    }

    private static string Row(IntervalMethod method, int trials)
    {
        var study = IntervalCoverage.Of(method, trials);
        var (coverage, width, least, where) = (0.0, 0.0, 1.0, 0.0);
        for (var step = 1; step <= 500; step++)
        {
            var rate = step / 1000.0;
            var one = study.At(rate);
            coverage += one / 500;
            width += study.WidthAt(rate) / 500;
            if (one < least) (least, where) = (one, rate);
        }

        return string.Create(CultureInfo.InvariantCulture, $"{method.Name()},{trials},{coverage:0.000000},{least:0.000000},{where:0.000},{width:0.000000}\n");
    }
}
