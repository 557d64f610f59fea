using System.Collections.Immutable;
using ScreenStats.Counting.Diagnostics;

namespace ScreenStats.Counting.Programs.Reading;

/// <summary>Collects what is wrong with a program file, so that all of it is reported at once.</summary>
internal sealed class ProgramProblems(string file)
{
    private readonly List<Diagnostic> found = [];

    public bool Any => found.Count > 0;

    public ImmutableArray<Diagnostic> InOrder() => [.. found.OrderBy(problem => problem.Line)];

    public void Add(string code, long line, string message) =>
        found.Add(new(code, Severity.Error, file, line, "", message));

    public void WrongValue(JsonItem item, string expected) =>
        Add(ProgramFile.WrongValueCode, item.Line, $"{(item.Path.Length == 0 ? "The program file" : item.Path)} must be {expected}.");
}
