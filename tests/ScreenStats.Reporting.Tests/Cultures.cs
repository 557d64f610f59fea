using System.Globalization;

namespace ScreenStats.Reporting.Tests;

/// <summary>Runs something as if on another machine.</summary>
internal static class Cultures
{
    public static readonly string[] Names = ["", "de-DE", "tr-TR"];

    public static T In<T>(string culture, Func<T> work)
    {
        var former = CultureInfo.CurrentCulture;
        var formerDefault = CultureInfo.DefaultThreadCurrentCulture;
        try
        {
            // Also the default: pictures are drawn on threads of the pool.
            CultureInfo.DefaultThreadCurrentCulture = CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            return work();
        }
        finally
        {
            CultureInfo.CurrentCulture = former;
            CultureInfo.DefaultThreadCurrentCulture = formerDefault;
        }
    }
}
