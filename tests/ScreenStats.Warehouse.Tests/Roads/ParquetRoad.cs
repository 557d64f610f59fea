using Parquet;
using Parquet.Schema;
using ScreenStats.Warehouse.Tests.Programs;

namespace ScreenStats.Warehouse.Tests.Roads;

/// <summary>Parquet, every column typed as narrowly as its values allow: dates, local times, instants, yes and no, else text.</summary>
internal sealed class ParquetRoad : IRoad
{
    private static readonly string[] Times = ["collected_at", "read_at", "lot_expiry", "reported_at"];
    private static readonly string[] Truths = ["symptomatic", "exposed", "outbreak"];

    public void Lay(SmallProgram program, string folder)
    {
        File.WriteAllText(Path.Combine(folder, "program.json"), program.ProgramFile());
        Write(Path.Combine(folder, "screening.parquet"), SmallProgram.ScreeningColumns, program.Screening, program.Zone);
        if (program.Confirmatory is not null) Write(Path.Combine(folder, "confirmatory.parquet"), SmallProgram.ConfirmatoryColumns, program.Confirmatory, program.Zone);
        foreach (var (name, text) in program.Files) File.WriteAllText(Path.Combine(folder, name), text);
    }

    private static void Write(string path, string[] columns, IReadOnlyList<Row> rows, TimeZoneInfo? zone)
    {
        var fields = columns.Select(column => Field(column, rows, zone)).ToList();
        var schema = new ParquetSchema(fields.Cast<Field>().ToArray());
        using var stream = File.Create(path);
        Go().GetAwaiter().GetResult();

        async Task Go()
        {
            await using var writer = await ParquetWriter.CreateAsync(schema, stream);
            // Several row groups, so that records are counted across them.
            foreach (var some in rows.Chunk(Math.Max(1, (rows.Count / 3) + 1)))
            {
                using var group = writer.CreateRowGroup();
                for (var c = 0; c < columns.Length; c++)
                {
                    var texts = some.Select(row => row[columns[c]]).ToArray();
                    var field = schema.DataFields[c];
                    if (field is DateTimeDataField { DateTimeFormat: DateTimeFormat.Timestamp } moments)
                        await group.WriteAsync<DateTime>(field, texts.Select(text => WrittenTime.Of(text) is { } time ? (DateTime?)(moments.IsAdjustedToUTC ? time.Utc(zone) : time.Local) : null).ToArray());
                    else if (field is DateTimeDataField) await group.WriteAsync<DateTime>(field, texts.Select(text => WrittenTime.Of(text)?.Local).ToArray());
                    else if (field.ClrType == typeof(bool)) await group.WriteAsync<bool>(field, texts.Select(text => text.Length == 0 ? (bool?)null : text == "yes").ToArray());
                    else await group.WriteAsync(field, texts.Select(text => text.Length == 0 ? null : text).ToArray());
                }
            }
        }
    }

    private static DataField Field(string column, IReadOnlyList<Row> rows, TimeZoneInfo? zone)
    {
        var texts = rows.Select(row => row[column]).Where(text => text.Length > 0).ToList();
        if (texts.Count == 0) return new DataField<string>(column);
        if (Truths.Contains(column) && texts.All(text => text is "yes" or "no")) return new DataField<bool?>(column);
        if (!Times.Contains(column)) return new DataField<string>(column);
        var times = texts.Select(text => WrittenTime.Of(text)!.Value).ToList();
        if (times.All(time => time.DateOnly)) return new DateTimeDataField(column, DateTimeFormat.Date, isNullable: true);
        if (times.All(time => !time.DateOnly && time.Offset is null)) return new DateTimeDataField(column, DateTimeFormat.Timestamp, isAdjustedToUTC: false, DateTimeTimeUnit.Micros, isNullable: true);
        // An instant is read in the program's time zone, so offsets must be those of the zone.
        if (zone is not null && times.All(time => time.Offset is { } offset && zone.GetUtcOffset(time.Utc(zone)) == offset)) return new DateTimeDataField(column, DateTimeFormat.Timestamp, isAdjustedToUTC: true, DateTimeTimeUnit.Millis, isNullable: true);
        return new DataField<string>(column);
    }
}
