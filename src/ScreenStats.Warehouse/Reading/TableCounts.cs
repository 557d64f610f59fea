using System.Collections.Immutable;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Warehouse.Contract;
using ScreenStats.Warehouse.Engines;
using ScreenStats.Warehouse.Sql;

namespace ScreenStats.Warehouse.Reading;

/// <summary>Counts that need no other row, of all rows, where they lie: into the tables of a sink.</summary>
internal sealed class TableCounts(Asking asking, ScreeningSql sql, View view, Names names, LocalTimes times, RunSink sink)
{
    private const string Collected = ViewContract.CollectedAt;

    /// <summary>Fills the tables.</summary>
    public void Fill(ProgramSettings settings, Vocabularies vocabularies, long firstInstant)
    {
        Screens();
        Operators();
        var devices = new DeviceOfLot(settings, vocabularies);
        if (view.Has(ViewContract.Kit)) Kits(devices);
        Minutes(firstInstant);
        if (view.Has(ViewContract.LotExpiry)) Expired();
        foreach (var device in settings.Screens.Where(device => (device.ReadFromMinutes ?? device.ReadToMinutes) is not null)) Reading(device, devices, vocabularies);
    }

    private void Screens()
    {
        var (lot, specimen, collection, outbreak) = (view.Has(ViewContract.Lot), view.Has(ViewContract.Specimen), view.Has(ViewContract.Collection), view.Has(ViewContract.Outbreak));
        ImmutableArray<string> keys =
        [
            "site", Dialect.Day("collected_on"), "result", .. lot ? ["lot"] : Array.Empty<string>(), .. specimen ? ["specimen"] : Array.Empty<string>(),
            .. collection ? ["collection"] : Array.Empty<string>(), .. outbreak ? ["CASE WHEN outbreak THEN 1 WHEN NOT outbreak THEN 0 END"] : Array.Empty<string>(),
        ];
        asking.Read(sql.Counts("the runs by site, lot and day", keys), keys.Length, (line, at, count) =>
        {
            var row = new RunRow { Site = names.Site(line.Text(at)!), Outcome = (Outcome)Names.Word(ViewContract.Outcomes, line.Text(at + 2)) };
            var next = at + 3;
            if (lot) row.Lot = names.Lot(line.Text(next++));
            if (specimen) row.Specimen = (Specimen)(Names.Word(ViewContract.Specimens, line.Text(next++)) + 1);
            if (collection) row.Collection = (CollectedBy)(Names.Word(ViewContract.Collections, line.Text(next++)) + 1);
            if (outbreak) row.Outbreak = Mark(line.Number(next));
            sink.Screens.Add(Keys.Shape(sink.Shapes.Code(RowShape.Of(row)), (int)line.Whole(at + 1)), count);
            sink.Checks.Meet(row.Site, row.Lot, FetchedRuns.Unseen);
        });
    }

    private void Operators()
    {
        var (person, outbreak) = (view.Has(ViewContract.Operator), view.Has(ViewContract.Outbreak));
        ImmutableArray<string> keys =
        [
            "site", Dialect.Day("collected_on"), "result", .. person ? ["operator"] : Array.Empty<string>(),
            .. outbreak ? ["CASE WHEN outbreak THEN 1 WHEN NOT outbreak THEN 0 END"] : Array.Empty<string>(),
        ];
        asking.Read(sql.Counts("the runs by operator", keys), keys.Length, (line, at, count) =>
        {
            var code = person ? names.Operator(line.Text(at + 3)) : 0;
            LevelLimits.Check(code, LevelLimits.MostOperators, "operator", "operators");
            sink.Operators.Add(Keys.Operator(code, names.Site(line.Text(at)!), (int)line.Whole(at + 1), (Outcome)Names.Word(ViewContract.Outcomes, line.Text(at + 2)),
                outbreak ? Mark(line.Number(at + (person ? 4 : 3))) : OutbreakMark.NotRecorded), count);
        });
    }

    private void Kits(DeviceOfLot devices)
    {
        var lot = view.Has(ViewContract.Lot);
        ImmutableArray<string> keys = ["site", Dialect.Day("collected_on"), "kit", .. lot ? ["lot"] : Array.Empty<string>()];
        asking.Read(sql.Counts("the runs by kit", keys, "kit IS NOT NULL AND kit <> ''"), keys.Length, (line, at, count) =>
        {
            var (site, kit, lotCode) = (names.Site(line.Text(at)!), names.Kit(line.Text(at + 2)), lot ? names.Lot(line.Text(at + 3)) : 0);
            sink.Checks.KitDays.Add(site, lotCode, kit, (int)line.Whole(at + 1), (int)count, FetchedRuns.Unseen);
            if (devices.AnyKitContents && devices.Of(lotCode) is { RunsPerKit: not null }) LevelLimits.Check(kit, LevelLimits.MostKits, "kit", "kits");
        });
    }

    private void Minutes(long firstInstant)
    {
        // Every time zone of today keeps its quarter of the hour the year round but Lord Howe's, of which a finding may be half an hour off.
        var shift = times.OffsetAt(firstInstant) * 60L;
        asking.Read(sql.Minutes(), line => sink.Checks.AddMinutes(names.Site(line.Text(0)!), (int)((((line.Whole(1) + shift) % 3600) + 3600) % 3600 / 60), line.Whole(2)));
    }

    private void Expired()
    {
        var keys = Place();
        asking.Read(sql.Counts("the runs with expired lots", keys, "lot_expiry < collected_on"), keys.Length, (line, at, count) =>
        {
            sink.Conduct.Add(Conduct(ConductKind.ExpiredLot, line, at), count);
            sink.Checks.Expired.AddUnseen(count);
        });
    }

    private void Reading(ScreenSettings device, DeviceOfLot devices, Vocabularies vocabularies)
    {
        var all = vocabularies.Lots.ToArray();
        var lots = Enumerable.Range(1, all.Length - 1).Where(code => devices.Of(code) == device).Select(code => all[code]).ToArray();
        var none = devices.Of(0) == device;
        if (lots.Length == 0 && !none) return;
        var hasLots = view.Has(ViewContract.Lot);
        var condition = !hasLots ? "" : lots.Length == 0 ? "(lot IS NULL OR lot = '')" : none ? $"(lot IS NULL OR lot = '' OR {asking.Dialect.Among("lot", 1)})" : asking.Dialect.Among("lot", 1);
        var late = device.ReadToMinutes is { } to ? $" WHEN NOT {IsLess((to + 1L) * 60)} THEN 2" : "";
        var early = device.ReadFromMinutes is { } from ? $" WHEN {IsLess(0)} THEN 4 WHEN {IsLess(from * 60L)} THEN 3" : "";
        var how = view.Has(ViewContract.ReadAt) ? $"CASE WHEN {ViewContract.ReadAt} IS NULL OR {Collected} IS NULL THEN 1{late}{early} ELSE 0 END" : "1 + 0";
        ImmutableArray<string> keys = [.. Place(), how];
        asking.Read(sql.Counts("the runs by when they were read", keys, condition, hasLots && lots.Length > 0 ? [lots] : []), keys.Length, (line, at, count) =>
        {
            var read = line.Whole(at + keys.Length - 1);
            if (read == 0) return;
            sink.Conduct.Add(Conduct(read == 1 ? ConductKind.ReadingNotRecorded : ConductKind.ReadOutsideWindow, line, at), count);
            if (read == 2) sink.Checks.ReadTooLate.AddUnseen(count);
            else if (read == 3) sink.Checks.ReadTooEarly.AddUnseen(count);
        });
    }

    private string IsLess(long seconds) => $"({asking.Dialect.IsLess(Collected, ViewContract.ReadAt, seconds)})";

    private ImmutableArray<string> Place() => ["site", Dialect.Day("collected_on"), .. view.Has(ViewContract.Lot) ? ["lot"] : Array.Empty<string>()];

    private ulong Conduct(ConductKind kind, Line line, int at) =>
        Keys.Conduct(kind, names.Site(line.Text(at)!), view.Has(ViewContract.Lot) ? names.Lot(line.Text(at + 2)) : 0, (int)line.Whole(at + 1));

    private static OutbreakMark Mark(long? value) => value switch { 0 => OutbreakMark.No, 1 => OutbreakMark.Yes, _ => OutbreakMark.NotRecorded };
}
