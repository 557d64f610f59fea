using System.Collections;
using System.Globalization;
using System.Reflection;

namespace ScreenStats.Evaluation.Tests.Sketches;

/// <summary>Follows a figure's path through the findings as it stands in findings.json: camelCase names, rows by their first property.</summary>
internal static class FigureLookup
{
    public static object? Find(object root, string path)
    {
        object? at = root;
        foreach (var segment in Segments(path))
        {
            if (at is null) throw new InvalidOperationException($"{path}: nothing there before {segment}.");
            at = segment.StartsWith('[') ? Row(at, segment[1..], path) : Property(at, segment, path);
        }

        return at;
    }

    private static object? Property(object at, string name, string path)
    {
        var property = at.GetType().GetProperties().FirstOrDefault(property => Camel(property.Name) == name)
            ?? throw new InvalidOperationException($"{path}: {at.GetType().Name} has no {name}.");
        return property.GetValue(at);
    }

    private static object? Row(object list, string key, string path)
    {
        foreach (var item in (IEnumerable)list)
        {
            if ((item as string ?? Key(item)) == key) return item;
        }

        throw new InvalidOperationException($"{path}: no row {key}.");
    }

    private static string Key(object row)
    {
        var first = row.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance).OrderBy(property => property.MetadataToken).First();
        return Convert.ToString(first.GetValue(row), CultureInfo.InvariantCulture) ?? "";
    }

    private static string Camel(string name) => char.ToLowerInvariant(name[0]) + name[1..];

    private static IEnumerable<string> Segments(string path)
    {
        var text = new System.Text.StringBuilder();
        for (var at = 0; at < path.Length; at++)
        {
            switch (path[at])
            {
                case '.':
                    if (text.Length > 0) yield return text.ToString();
                    text.Clear();
                    break;
                case '[':
                    if (text.Length > 0) yield return text.ToString();
                    text.Clear();
                    text.Append('[');
                    for (at++; path[at] != ']'; at++)
                    {
                        if (path[at] == '\\') at++;
                        text.Append(path[at]);
                    }

                    yield return text.ToString();
                    text.Clear();
                    break;
                default:
                    text.Append(path[at]);
                    break;
            }
        }

        if (text.Length > 0) yield return text.ToString();
    }
}
