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
}
