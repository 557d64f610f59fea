namespace ScreenStats.Records.Understanding;

/// <summary>The text of a heading.</summary>
internal static class HeadingText
{
    /// <summary>A heading without what stands in brackets, such as a unit; the heading itself where nothing else would be left.</summary>
    public static string WithoutBrackets(string heading)
    {
        var open = heading.AsSpan().IndexOfAny('(', '[', '{');
        if (open < 0) return heading;
        var text = new System.Text.StringBuilder(heading.Length);
        var depth = 0;
        foreach (var c in heading)
        {
            if (c is '(' or '[' or '{') depth++;
            else if (c is ')' or ']' or '}') depth = Math.Max(0, depth - 1);
            else if (depth == 0) text.Append(c);
        }

        var left = text.ToString().Trim();
        return left.Length == 0 ? heading : left;
    }

    /// <summary>True for two headings so alike that one may be the other mistyped: at most every third letter differs, the letters are in another order, or one begins with the other.</summary>
    public static bool Near(string wanted, string heading)
    {
        if (wanted.Length > 200 || heading.Length > 200) return false;
        var a = TextFold.Fold(wanted);
        var b = TextFold.Fold(heading);
        return 3 * Distance(wanted, heading) <= Math.Max(3, a.Length) || a.Order().SequenceEqual(b.Order())
            || (Math.Min(a.Length, b.Length) >= 3 && (a.StartsWith(b, StringComparison.Ordinal) || b.StartsWith(a, StringComparison.Ordinal)));
    }

    /// <summary>Letters to insert, leave out or replace to come from one heading to the other, both folded.</summary>
    public static int Distance(string first, string second)
    {
        var a = TextFold.Fold(first);
        var b = TextFold.Fold(second);
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var above = row[j];
                row[j] = Math.Min(Math.Min(row[j], row[j - 1]) + 1, diagonal + (a[i - 1] == b[j - 1] ? 0 : 1));
                diagonal = above;
            }
        }

        return row[b.Length];
    }
}
