using System.CommandLine;
using System.CommandLine.Parsing;
using ScreenStats.Cli.Commands;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Cli;

/// <summary>Says in our words why a line could not be split into arguments and options.</summary>
internal static class SyntaxFault
{
    /// <summary>The first fault, or null where the line is well formed.</summary>
    public static string? Of(RunnerCommand command, ParseResult parsed, string[] written)
    {
        if (parsed.Errors.Count == 0) return null;
        foreach (var argument in written)
        {
            var name = argument.Split('=', ':')[0];
            if (name.StartsWith("--", StringComparison.Ordinal) && name.Length > 2 && !command.Syntax.Options.Any(option => option.Name == name))
            {
                var nearest = NearestName.Of(name, [.. command.Syntax.Options.Select(option => option.Name), "--help"]);
                return $"{command.Name} has no option {name}; the nearest is {nearest}.";
            }
        }

        foreach (var option in command.Syntax.Options)
        {
            var result = parsed.GetResult(option);
            if (option.Required && result is null or { Tokens.Count: 0, Implicit: true }) return $"{option.Name} is missing.";
            if (result is null or { Implicit: true } || option.Arity.MaximumNumberOfValues == 0) continue;
            if (result.Tokens.Count == 0) return $"{option.Name} needs a value.";
            if (result.IdentifierTokenCount > 1) return $"{option.Name} is given more than once.";
        }

        foreach (var argument in command.Syntax.Arguments)
        {
            if (parsed.GetResult(argument) is null or { Tokens.Count: 0 }) return $"<{argument.Name}> is missing.";
        }

        return parsed.UnmatchedTokens.Count > 0 ? $"\"{parsed.UnmatchedTokens[0]}\" is one argument too many." : parsed.Errors[0].Message;
    }
}
