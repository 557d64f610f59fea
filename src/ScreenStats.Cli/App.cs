using System.CommandLine;
using System.Reflection;
using ScreenStats.Cli.Commands;
using ScreenStats.Cli.Commands.Cadence;
using ScreenStats.Cli.Terminal;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;
using ScreenStats.Evaluation.Changes;
using ScreenStats.Records.Deidentification.Pseudonyms;
using ScreenStats.Reporting;

namespace ScreenStats.Cli;

/// <summary>The console runner as tests call it: nothing in it touches the console, the environment or the clock.</summary>
internal static class App
{
    /// <summary>Every command, in the order in which the help lists them.</summary>
    public static IReadOnlyList<RunnerCommand> Commands() =>
        [
            new EvaluateCommand(), new InspectCommand(), new AlarmsCommand(), new ValueCommand(), new IntervalCommand(), new ContrastCommand(), new AgreementCommand(), new AdjustCommand(),
            new PredictCommand(), new PrevalenceCommand(), new ClustersCommand(), new PlanCommand(), new CadenceCommand(),
            new AccuracyCommand(), new BoundsCommand(), new LatentClassCommand(), new PseudonymizeCommand(), new SynthesizeCommand(), new CompletionCommand(),
        ];

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
        catch (Exception failure) when (failure is NotOurFolderException or NotFindingsException or NotComparableException or PseudonymizeException)
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
        var commands = Commands();
        if (args.Length == 0) throw new UsageException("no command was given.");
        if (args[0] is "--help" or "-h" or "-?" or "help")
        {
            output.Write(args.Length > 1 && args[0] == "help" ? Help.Of(Find(commands, args[1])) : Help.Root(commands));
            return ExitCode.Done;
        }

        if (args[0] == "--version")
        {
            output.Write($"screenstats {Version()}\n");
            return ExitCode.Done;
        }

        var command = Find(commands, args[0]);
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

    private static RunnerCommand Find(IReadOnlyList<RunnerCommand> commands, string name) =>
        commands.FirstOrDefault(command => string.Equals(command.Name, name, StringComparison.Ordinal))
        ?? throw new UsageException(name.StartsWith('-')
            ? $"the command comes first, before {name}."
            : $"\"{name}\" is not a command; the nearest is \"{NearestName.Of(name, [.. commands.Select(command => command.Name)])}\".");

    private static string HelpFor(string[] args) =>
        args.Length > 0 && Commands().Any(command => string.Equals(command.Name, args[0], StringComparison.Ordinal))
            ? $"screenstats {args[0]} --help"
            : "screenstats --help";

    private static string Version() =>
        typeof(App).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0] ?? "";
}
