using System.Globalization;
using ScreenStats.Cli.Terminal;

namespace ScreenStats.Cli.Tests;

/// <summary>Runs a command line through <see cref="App.Run"/> and keeps what it said.</summary>
internal sealed record Runner(int Code, string Output, string Errors)
{
    public static Runner Of(params string[] args) => In(new RunnerEnvironment(), args);

    public static Runner In(RunnerEnvironment environment, params string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var errors = new StringWriter { NewLine = "\n" };
        var code = App.Run(args, TextReader.Null, output, errors, environment, TimeProvider.System);
        return new(code, output.ToString(), errors.ToString());
    }

    /// <summary>Runs under another culture and puts the former one back.</summary>
    public static Runner Under(string culture, params string[] args)
    {
        var before = CultureInfo.CurrentCulture;
        var beforeUi = CultureInfo.CurrentUICulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(culture);
            return Of(args);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
            CultureInfo.CurrentUICulture = beforeUi;
        }
    }
}
