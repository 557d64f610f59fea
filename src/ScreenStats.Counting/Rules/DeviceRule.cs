using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;

namespace ScreenStats.Counting.Rules;

/// <summary>Which screening device a lot belongs to.</summary>
public static class DeviceRule
{
    /// <summary>
    /// The device of a lot: the first, in the order of the program file, one of whose patterns fits; else the first without patterns, which
    /// takes every lot that no other claims, also a lot that is not recorded. A pattern never fits a lot that is not recorded.
    /// </summary>
    /// <param name="lot">Name of the lot, or <see cref="Levels.None"/>.</param>
    /// <param name="screens">The devices of the program file.</param>
    /// <returns>The device; null where none claims the lot.</returns>
    public static ScreenSettings? Of(string lot, ImmutableArray<ScreenSettings> screens)
    {
        if (lot != Levels.None)
        {
            foreach (var screen in screens)
            {
                foreach (var pattern in screen.Lots)
                {
                    if (Fits(lot, pattern)) return screen;
                }
            }
        }

        return screens.FirstOrDefault(screen => screen.Lots.IsEmpty);
    }

    /// <summary>True where a text fits a pattern: * stands for any number of characters, ? for exactly one; case matters.</summary>
    /// <param name="text">The text.</param>
    /// <param name="pattern">The pattern.</param>
    /// <returns>Whether the whole text fits.</returns>
    public static bool Fits(ReadOnlySpan<char> text, ReadOnlySpan<char> pattern)
    {
        var (at, star, mark) = (0, -1, 0);
        var next = 0;
        while (at < text.Length)
        {
            if (next < pattern.Length && pattern[next] == '*')
            {
                star = next++;
                mark = at;
            }
            else if (next < pattern.Length && (pattern[next] == '?' || pattern[next] == text[at]))
            {
                at++;
                next++;
            }
            else if (star >= 0)
            {
                next = star + 1;
                at = ++mark;
            }
            else
            {
                return false;
            }
        }

        return pattern[next..].TrimStart('*').IsEmpty;
    }
}
