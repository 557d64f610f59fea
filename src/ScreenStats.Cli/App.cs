using System.CommandLine;
using System.Reflection;
using ScreenStats.Cli.Commands;
using ScreenStats.Cli.Commands.Cadence;
using ScreenStats.Cli.Terminal;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Changes;
using ScreenStats.Records;
using ScreenStats.Records.Deidentification.Pseudonyms;
using ScreenStats.Reporting;

namespace ScreenStats.Cli;

/// <summary>The console runner as tests call it: nothing in it touches the console, the environment or the clock.</summary>
internal static class App
{
    // In the order in which the help lists them. A command makes its options when it is made, so only the one that is asked for is.
    private static readonly CommandPlace[] Places =
    [
        new("evaluate", () => new EvaluateCommand()), new("inspect", () => new InspectCommand()), new("alarms", () => new AlarmsCommand()), new("value", () => new ValueCommand()),
        new("interval", () => new IntervalCommand()), new("contrast", () => new ContrastCommand()), new("agreement", () => new AgreementCommand()), new("adjust", () => new AdjustCommand()),
        new("predict", () => new PredictCommand()), new("prevalence", () => new PrevalenceCommand()), new("clusters", () => new ClustersCommand()), new("plan", () => new PlanCommand()),
        new("cadence", () => new CadenceCommand()), new("accuracy", () => new AccuracyCommand()), new("bounds", () => new BoundsCommand()), new("latent-class", () => new LatentClassCommand()),
        new("pseudonymize", () => new PseudonymizeCommand()), new("synthesize", () => new SynthesizeCommand()), new("completion", () => new CompletionCommand()),
    ];

    /// <summary>Every command, in the order in which the help lists them.</summary>
    public static IReadOnlyList<RunnerCommand> Commands() => Array.ConvertAll(Places, place => place.Make());

    /// <summary>The names by which they are found, in the same order.</summary>
    public static IReadOnlyList<string> CommandNames => Array.ConvertAll(Places, place => place.Name);

    /// <summary>Runs one command line and answers the exit code.</summary>
    public static int Run(
        string[] args, TextReader input, TextWriter output, TextWriter errors, RunnerEnvironment environment, TimeProvider time)
    {
        _ = input;
        void Say(string text) => errors.Write(Wrapped.Of(text, environment.ErrorWidth) + "\n");
        try
        {
            var code = Dispatch(args, output, errors, environment, time);
            output.Flush();
            return code;
        }
        // A wish to stop may surface as whatever the threads at work made of it.
        catch (Exception) when (environment.Cancelled.IsCancellationRequested)
        {
            Say("screenstats: cancelled; nothing was written.");
            return ExitCode.Cancelled;
        }
        catch (UsageException failure)
        {
            Say($"screenstats: {failure.Message}");
            Say($"Run \"{HelpFor(args)}\" to see what it takes.");
            return ExitCode.Usage;
        }
        catch (Exception failure) when (failure is NotOurFolderException or CacheFolderException or NotFindingsException or NotComparableException or PseudonymizeException)
        {
            Say($"screenstats: {failure.Message}");
            return ExitCode.Usage;
        }
        catch (UnusableDataException failure)
        {
            DiagnosticLines.Write(errors, failure.Diagnostics, environment.ErrorWidth);
            return ExitCode.DataCannotAnswer;
        }
        catch (Exception failure) when (DiskFault.Full(failure) is not null)
        {
            Say($"screenstats: {DiskFault.Full(failure)}");
            return ExitCode.DataCannotAnswer;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            // The system's words name the path and the reason and never the text of a file.
            Say($"screenstats: a file cannot be used: {failure.Message}");
            return ExitCode.DataCannotAnswer;
        }
#pragma warning disable CA1031 // The last line of defence: a defect becomes one message and an exit code of its own.
        catch (Exception failure)
#pragma warning restore CA1031
        {
            Say(environment.Debugging
                ? failure.ToString()
                : $"screenstats: this is a defect of ScreenStats ({failure.GetType().Name}); please report it with the command you ran. Set SCREENSTATS_DEBUG=1 for details.");
            return ExitCode.Defect;
        }
    }

    private static int Dispatch(string[] args, TextWriter output, TextWriter errors, RunnerEnvironment environment, TimeProvider time)
    {
        if (args.Length == 0) throw new UsageException("no command was given.");
        if (args[0] is "--help" or "-h" or "-?" or "help")
        {
            output.Write(args.Length > 1 && args[0] == "help" ? Help.Of(Find(args[1])) : Help.Root(Commands()));
            return ExitCode.Done;
        }

        if (args[0] == "--version")
        {
            output.Write($"screenstats {Version()}\n");
            return ExitCode.Done;
        }

        var command = Find(args[0]);
        var rest = args[1..];
        if (rest.TakeWhile(arg => arg != "--").Any(arg => arg is "--help" or "-h" or "-?"))
        {
            output.Write(Help.Of(command));
            return ExitCode.Done;
        }

        // "@x" is a lot, a name, anything; never a file with more arguments.
        var parsed = command.Syntax.Parse(rest, new ParserConfiguration { ResponseFileTokenReplacer = null, EnablePosixBundling = false });
        if (SyntaxFault.Of(command, parsed, rest) is { } fault) throw new UsageException(fault);
        return command.Run(new Invocation(parsed, output, errors, environment, time));
    }

    private static RunnerCommand Find(string name) =>
        Array.Find(Places, place => string.Equals(place.Name, name, StringComparison.Ordinal))?.Make()
        ?? throw new UsageException(name.StartsWith('-')
            ? $"the command comes first, before {name}."
            : $"\"{name}\" is not a command; the nearest is \"{NearestName.Of(name, CommandNames)}\".");

    private static string HelpFor(string[] args) =>
        args.Length > 0 && Array.Exists(Places, place => string.Equals(place.Name, args[0], StringComparison.Ordinal))
            ? $"screenstats {args[0]} --help"
            : "screenstats --help";

    private static string Version() =>
        typeof(App).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0] ?? "";

    private sealed record CommandPlace(string Name, Func<RunnerCommand> Make);
}
