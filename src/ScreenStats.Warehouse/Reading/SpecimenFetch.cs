using ScreenStats.Counting.Cubes;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Warehouse.Contract;
using ScreenStats.Warehouse.Engines;
using ScreenStats.Warehouse.Sql;

namespace ScreenStats.Warehouse.Reading;

/// <summary>Understands the lines of <see cref="ConfirmatorySql.Rows"/>.</summary>
internal sealed class SpecimenFetch(LocalTimes times, Vocabularies vocabularies, FetchedSpecimens rows)
{
    private static readonly string[] Columns = [ViewContract.Person, ViewContract.CollectedAt, ViewContract.Result, ViewContract.ReportedAt, ViewContract.Method, ViewContract.Reason, ViewContract.SamplingStratum];

    /// <summary>Lines read.</summary>
    public long Lines { get; private set; }

    /// <summary>Lines with a usable value, by column.</summary>
    public Dictionary<string, long> Recorded { get; } = Columns.ToDictionary(column => column, _ => 0L, StringComparer.Ordinal);

    /// <summary>Lines that are set aside: their number and why.</summary>
    public List<(long? Number, RowFault Fault)> SetAside { get; } = [];

    /// <summary>Lines whose reason is none of the agreed words.</summary>
    public long UnknownReasons { get; private set; }

    /// <summary>True where a date is not the local one of its instant.</summary>
    public bool WrongDates { get; private set; }

    /// <summary>Takes a line.</summary>
    public void Take(Line line)
    {
        Lines++;
        var person = line.Text(0);
        var (noDate, day, instant, result) = (line.YesNo(1), (int?)line.Number(2), line.Number(3), Names.Word(ViewContract.Results, line.Text(4)));
        var fault = person is null ? RowFault.NoPerson : noDate ? RowFault.NoDate : day is null ? RowFault.ImpossibleDate : line.Text(4) is null ? RowFault.NoResult : result < 0 ? RowFault.UnknownResult : RowFault.None;
        var (reportedAt, reportedOn) = (line.Number(5), (int?)line.Number(6));
        Record(ViewContract.Person, person is not null);
        Record(ViewContract.CollectedAt, day is not null);
        Record(ViewContract.Result, result >= 0);
        Record(ViewContract.ReportedAt, reportedAt is not null || reportedOn is not null);
        Record(ViewContract.Method, line.Text(7) is not null);
        var reason = Names.Word(ViewContract.Reasons, line.Text(8));
        Record(ViewContract.Reason, reason >= 0);
        if (reason < 0 && line.Text(8) is not null) UnknownReasons++;
        var stratum = line.Text(9);
        Record(ViewContract.SamplingStratum, stratum is not null);
        if (fault != RowFault.None)
        {
            SetAside.Add((line.Number(10), fault));
            return;
        }

        var specimen = new SpecimenRow { Person = Names.Person(person), Result = (ConfirmatoryResult)result, Reason = (SpecimenReason)(reason + 1), Stratum = stratum is null ? 0 : vocabularies.Strata.Code(stratum) };
        if (instant is { } at)
        {
            (specimen.Instant, specimen.OffsetMinutes) = (at, times.Offset(day!.Value, at));
            WrongDates |= !times.IsOn(day.Value, at);
        }
        else
        {
            specimen.Instant = times.Midnight(day!.Value, out specimen.OffsetMinutes);
            specimen.DateOnly = true;
        }

        if (reportedAt is not null) specimen.Reported = reportedAt;
        else if (reportedOn is { } on)
        {
            specimen.Reported = times.Midnight(on, out _);
            specimen.ReportedDateOnly = true;
        }

        var meaning = RowFetch.Mix(specimen.Person, (ulong)specimen.Instant);
        meaning = RowFetch.Mix(meaning, ((ulong)specimen.Result << 8) | ((ulong)specimen.Reason << 4) | (specimen.DateOnly ? 2u : 0u) | (specimen.ReportedDateOnly ? 1u : 0u));
        meaning = RowFetch.Mix(meaning, (ulong)(specimen.Reported ?? long.MinValue));
        specimen.Meaning = RowFetch.Mix(meaning, (stratum is null ? 0 : Names.Hash(stratum)) ^ (line.Text(7) is { } method ? Names.Hash(method) : 1));
        rows.Add(specimen, new(person, line.Text(7), 0, null), line.Number(10));
    }

    private void Record(string column, bool recorded)
    {
        if (recorded) Recorded[column]++;
    }
}
