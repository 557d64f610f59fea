namespace ScreenStats.Evaluation.Model;

/// <summary>
/// How a figure is addressed in findings.json: property names in camelCase joined by dots; a row of a list by its key in
/// brackets, as in <c>lots[L-07].refuted</c>, where the key is the value of the row's first property;
/// a word of a list of words by itself, as in <c>kits.flaggedLots[L-07]</c>. So no address changes because a row was added before it.
/// </summary>
public static class FigurePath
{
    /// <summary>The path of a row of a list.</summary>
    /// <param name="list">Path of the list.</param>
    /// <param name="key">Key of the row. A closing bracket or a backslash in it is preceded by a backslash.</param>
    /// <returns>For instance <c>lots[L-07]</c>.</returns>
    public static string Row(string list, string key) =>
        $"{list}[{key.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("]", "\\]", StringComparison.Ordinal)}]";
}
