using System.Collections;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Reflection;
using System.Text;

namespace ScreenStats.Evaluation.Disclosure;

/// <summary>Follows a figure's path through findings: property names in camelCase, rows of a list by their first property in brackets.</summary>
internal static class FindingPath
{
    /// <summary>Why findings may be looked through where unused code is left out.</summary>
    public const string KeptWhole = "Evaluation is kept whole where unused code is left out (ScreenStats.Cli.csproj), so the properties of every finding are there.";

    /// <summary>The object that has the figure, and the figure's property; null where the path leads nowhere.</summary>
    [UnconditionalSuppressMessage("Trimming", "IL2075", Justification = KeptWhole)]
    public static (object Owner, PropertyInfo Property)? Owner(object root, string path)
    {
        var at = root;
        (object, PropertyInfo)? last = null;
        foreach (var segment in Segments(path))
        {
            if (at is null) return null;
            if (segment.StartsWith('['))
            {
                at = at is IEnumerable list ? list.Cast<object>().FirstOrDefault(item => Key(item) == segment[1..]) : null;
                last = null;
                continue;
            }

            if (at.GetType().GetProperties().FirstOrDefault(property => Camel(property.Name) == segment) is not { } found) return null;
            last = (at, found);
            at = found.GetValue(at);
        }

        return last;
    }

    /// <summary>A property's name as it is in findings.json.</summary>
    public static string Camel(string name) => char.ToLowerInvariant(name[0]) + name[1..];

    /// <summary>A property's name as a column would have it.</summary>
    public static string Underscored(string name)
    {
        var text = new StringBuilder();
        for (var at = 0; at < name.Length; at++)
        {
            if (at > 0 && char.IsUpper(name[at])) text.Append('_');
            text.Append(char.ToLowerInvariant(name[at]));
        }

        return text.ToString();
    }

    [UnconditionalSuppressMessage("Trimming", "IL2075", Justification = KeptWhole)]
    private static string Key(object item)
    {
        if (item is string) return "";
        var first = item.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance).OrderBy(property => property.HasMetadataToken() ? property.MetadataToken : 0).First();
        return Convert.ToString(first.GetValue(item), CultureInfo.InvariantCulture) ?? "";
    }

    private static IEnumerable<string> Segments(string path)
    {
        var text = new StringBuilder();
        for (var at = 0; at < path.Length; at++)
        {
            if (path[at] is '.' or '[')
            {
                if (text.Length > 0) yield return text.ToString();
                text.Clear();
                if (path[at] == '.') continue;
                text.Append('[');
                for (at++; at < path.Length && path[at] != ']'; at++)
                {
                    if (path[at] == '\\' && at + 1 < path.Length) at++;
                    text.Append(path[at]);
                }

                yield return text.ToString();
                text.Clear();
            }
            else
            {
                text.Append(path[at]);
            }
        }

        if (text.Length > 0) yield return text.ToString();
    }
}
