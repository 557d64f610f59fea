using ScreenStats.Evaluation.Disclosure.Counts;

namespace ScreenStats.Evaluation.Disclosure.Rules;

/// <summary>A count by its name, of the row's own part of the program or of another one.</summary>
/// <param name="Of">The part; null for the row's own.</param>
/// <param name="Name">What is counted.</param>
internal readonly record struct Measure(CountUnit? Of, string Name)
{
    public static implicit operator Measure(string name) => new(null, name);

    /// <summary>A count of the whole program.</summary>
    public static Measure Program(string name) => new(CountUnit.Program, name);

    /// <summary>A count of every level of a breakdown.</summary>
    public static Measure Every(string by, string name) => new(new CountUnit(by, AllLevels, ""), name);

    /// <summary>Name of a level that stands for all of them.</summary>
    public const string AllLevels = "*";

    /// <summary>The count that is meant in a row of a part.</summary>
    public (CountUnit Unit, string Name) In(CountUnit own) => (Of ?? own, Name);
}
