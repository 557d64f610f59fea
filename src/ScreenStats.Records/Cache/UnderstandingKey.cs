using System.Security.Cryptography;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Cache;

/// <summary>
/// Everything but its bytes that decides how a file is understood, as one hash: form, columns, words, order of day and month, time zone. What
/// else the program file says is looked at when rows are counted, which is done anew in every run.
/// </summary>
internal static class UnderstandingKey
{
    /// <summary>For rows.</summary>
    public static byte[] OfRows(ExportKind export, FilePlan plan, ExportSettings settings, TimeZoneInfo? zone)
    {
        var key = Of("rows", export, plan);
        foreach (var order in plan.DateOrders) key.Signed(order is { } known ? (int)known : -1);
        key.Count(settings.Words.Count);
        foreach (var (word, meaning) in settings.Words)
        {
            key.Text(word);
            key.Text(meaning);
        }

        Zone(zone, key);
        return SHA256.HashData(key.Written);
    }

    /// <summary>For what dates say about the order of day and month.</summary>
    public static byte[] OfDates(ExportKind export, FilePlan plan) => SHA256.HashData(Of("dates", export, plan).Written);

    private static PackedWriter Of(string what, ExportKind export, FilePlan plan)
    {
        var key = new PackedWriter();
        key.Text(what);
        key.Text(Build.Id);
        key.Count((int)export);
        key.Count((int)plan.Encoding);
        key.Byte(plan.Delimiter);
        key.Count(plan.RecordsBeforeRows);
        key.Count(plan.Headings.Count);
        key.Signed(plan.AsideField);
        key.Byte(plan.TwoDigitYears ? (byte)1 : (byte)0);
        key.Count(plan.Matches.Length);
        foreach (var match in plan.Matches) key.Signed(match.Field);
        return key;
    }

    // By its rules, not by its name: these come from the system and change with it.
    private static void Zone(TimeZoneInfo? zone, PackedWriter key)
    {
        key.Byte(zone is null ? (byte)0 : (byte)1);
        if (zone is null) return;
        key.Text(zone.Id);
        key.Signed(zone.BaseUtcOffset.Ticks);
        foreach (var rule in zone.GetAdjustmentRules())
        {
            key.Signed(rule.DateStart.Ticks);
            key.Signed(rule.DateEnd.Ticks);
            key.Signed(rule.BaseUtcOffsetDelta.Ticks);
            key.Signed(rule.DaylightDelta.Ticks);
            Change(rule.DaylightTransitionStart, key);
            Change(rule.DaylightTransitionEnd, key);
        }
    }

    private static void Change(TimeZoneInfo.TransitionTime change, PackedWriter key)
    {
        key.Byte(change.IsFixedDateRule ? (byte)1 : (byte)0);
        key.Count(change.Month);
        key.Count(change.Week);
        key.Count(change.Day);
        key.Count((int)change.DayOfWeek);
        key.Signed(change.TimeOfDay.Ticks);
    }
}
