using System.Text;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Ledger;
using ScreenStats.Counting.Rules;
using ScreenStats.Records.Deidentification;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Records.Understanding;
using ScreenStats.Records.Validation;

namespace ScreenStats.Records.Cache;

/// <summary>
/// What was learnt of the rows of one file, in an entry. No cell of a row that was set aside and no pseudonym is in it: of names that only such
/// rows hold, and of people, there are hashes; of words that are not known those alone that could be shown.
/// </summary>
internal static class LearntForm
{
    // A word that is not known and could not be shown in any case: one for all of them.
    private const string NotShown = "\0";

    private static readonly int KindsOfFinding = Enum.GetValues<Finding>().Length;
    private static readonly int KindsOfResult = Enum.GetValues<ConfirmatoryResult>().Length;
    private static readonly int KindsOfReason = Enum.GetValues<SpecimenReason>().Length;

    public static void Write(PackedWriter to, ExportKind export, RowsLearnt learnt, EntryNames names, Vocabularies vocabularies, long firstRecord)
    {
        var columns = CanonicalColumns.Of(export);
        for (var c = 0; c < columns.Count; c++)
        {
            to.Signed(learnt.Recorded[c]);
            var (first, last) = learnt.DayNumbersOf(c);
            to.Signed(first);
            to.Signed(last);
            Sample(to, learnt.Samples[c]);
        }

        Found(to, learnt.Findings, columns.Count);
        to.Count(learnt.SetAside.Count);
        foreach (var row in learnt.SetAside)
        {
            to.Signed(Place.In(0, row.Place));
            to.Count((int)row.Finding);
            to.Count(row.Column);
            to.Unsigned(row.Record);
        }

        to.Count(learnt.UnreadSamples.Count);
        foreach (var ((_, field), sample) in learnt.UnreadSamples.OrderBy(one => one.Key.Field))
        {
            to.Count(field);
            Sample(to, sample);
        }

        Words(to, learnt);
        for (var c = 0; c < columns.Count; c++) Levels(to, learnt.LevelsOf(c), columns[c].Name, names, vocabularies);
        to.Count(learnt.Specimens.Count);
        foreach (var specimen in learnt.Specimens) Specimen(to, specimen, names, firstRecord);
    }

    /// <summary>Reads what <see cref="Write"/> wrote, for a file of a number and with a first record.</summary>
    public static RowsLearnt Read(ref PackedReader from, ExportKind export, EntryCodes codes, int file, uint firstRecord)
    {
        var learnt = new RowsLearnt(export);
        var columns = CanonicalColumns.Of(export);
        for (var c = 0; c < columns.Count; c++)
        {
            learnt.Recorded[c] = from.Signed();
            var first = from.Small();
            learnt.AddDays(c, first, from.Small());
            learnt.Samples[c] = Sample(ref from);
        }

        Found(ref from, learnt.Findings, columns.Count, file);
        for (var left = from.Count(); left > 0; left--)
        {
            var place = Place.In(file, from.Signed());
            var finding = (Finding)from.Below(KindsOfFinding);
            var column = from.Below(columns.Count);
            learnt.SetAside.Add(new SetAsideEntry(place, finding, column, null, (uint)from.Unsigned()));
        }

        for (var left = from.Count(); left > 0; left--)
        {
            var field = from.Below(int.MaxValue);
            if (Sample(ref from) is { } sample) learnt.AddUnread(file, field, sample);
        }

        for (var left = from.Count(); left > 0; left--)
        {
            var column = from.Below(columns.Count);
            var text = from.Text();
            var code = from.Small();
            learnt.AddWord(column, text, code, from.Signed());
        }

        for (var c = 0; c < columns.Count; c++) Levels(ref from, learnt, c, codes.Of(columns[c].Name));
        for (var left = from.Count(); left > 0; left--) learnt.Specimens.Add(Specimen(ref from, codes, firstRecord));
        return learnt;
    }

    private static void Words(PackedWriter to, RowsLearnt learnt)
    {
        var words = new Dictionary<(int Column, string Text, int Code), long>();
        foreach (var ((column, text, code), times) in learnt.Words)
        {
            var key = (column, code == Understanding.Words.Unknown && !ShownWords.CouldBeShown(text) ? NotShown : text, code);
            words[key] = words.GetValueOrDefault(key) + times;
        }

        to.Count(words.Count);
        foreach (var ((column, text, code), times) in words)
        {
            to.Count(column);
            to.Text(text);
            to.Signed(code);
            to.Signed(times);
        }
    }

    private static void Levels(PackedWriter to, long[]? times, string column, EntryNames names, Vocabularies vocabularies)
    {
        var (known, vocabulary) = names.Of(column, vocabularies);
        var met = times is null ? [] : Enumerable.Range(0, times.Length).Where(code => times[code] > 0).ToList();
        var shown = met.FindAll(code => known.Known(code) is not null);
        to.Count(shown.Count);
        foreach (var code in shown)
        {
            to.Count(known.Number(code));
            to.Signed(times![code]);
        }

        var others = met.FindAll(code => known.Known(code) is null);
        to.Count(others.Count);
        foreach (var code in others)
        {
            to.Whole(TextCodes.Hash(Encoding.UTF8.GetBytes(vocabulary[code])));
            to.Signed(times![code]);
        }
    }

    private static void Levels(ref PackedReader from, RowsLearnt learnt, int column, int[] codes)
    {
        for (var left = from.Count(); left > 0; left--)
        {
            var code = codes[from.Below(codes.Length)];
            learnt.AddLevel(column, code, from.Signed());
        }

        for (var left = from.Count(); left > 0; left--)
        {
            var name = (column, from.Whole());
            learnt.NamesOfRowsSetAside[name] = learnt.NamesOfRowsSetAside.GetValueOrDefault(name) + from.Signed();
        }
    }

    private static void Found(PackedWriter to, Findings findings, int columns)
    {
        foreach (var finding in Enum.GetValues<Finding>())
        {
            for (var c = 0; c < columns; c++)
            {
                to.Signed(findings.Count(finding, c));
                if (findings.Count(finding, c) == 0) continue;
                var places = findings.Places(finding, c);
                to.Count(places.Length);
                foreach (var place in places) to.Signed(Place.In(0, place));
            }
        }
    }

    private static void Found(ref PackedReader from, Findings findings, int columns, int file)
    {
        foreach (var finding in Enum.GetValues<Finding>())
        {
            for (var c = 0; c < columns; c++)
            {
                var count = from.Signed();
                if (count == 0) continue;
                var places = new long[from.Count()];
                foreach (ref var place in places.AsSpan()) place = Place.In(file, from.Signed());
                findings.Add(finding, c, count, places);
            }
        }
    }

    private static void Sample(PackedWriter to, ValueSample? sample)
    {
        to.Count(sample is null ? 0 : sample.Count + 1);
        for (var i = 0; i < (sample?.Count ?? 0); i++)
        {
            var of = sample!.Traits[i];
            to.Whole(sample.Hashes[i]);
            to.Count((int)of.Kind);
            to.Count((int)of.Other);
            to.Signed(of.Form);
            to.Signed(of.Passed);
        }
    }

    private static ValueSample? Sample(ref PackedReader from)
    {
        var count = from.Below(ValueSample.Most + 2);
        if (count == 0) return null;
        var sample = new ValueSample();
        for (var left = count - 1; left > 0; left--)
        {
            var hash = from.Whole();
            var (kind, other) = (from.Below(int.MaxValue), from.Below(int.MaxValue));
            var form = from.Small();
            sample.Add(hash, new ValueTraits((IdentityKind)kind, (ValueLooks)other, form, from.Small()));
        }

        return sample;
    }

    private static void Specimen(PackedWriter to, in SpecimenRow row, EntryNames names, long firstRecord)
    {
        to.Signed(row.Record - firstRecord);
        to.Whole(row.Person);
        to.Whole(row.Meaning);
        to.Signed(row.Instant);
        to.Signed(row.OffsetMinutes);
        to.Byte((byte)((row.DateOnly ? 1 : 0) | (row.ReportedDateOnly ? 2 : 0) | (row.Reported is null ? 0 : 4)));
        to.Count((int)row.Result);
        to.Count((int)row.Reason);
        to.Count(names.Strata.Number(row.Stratum));
        if (row.Reported is { } reported) to.Signed(reported);
    }

    private static SpecimenRow Specimen(ref PackedReader from, EntryCodes codes, uint firstRecord)
    {
        var row = new SpecimenRow
        {
            Record = (uint)(firstRecord + from.Signed()),
            Person = from.Whole(),
            Meaning = from.Whole(),
            Instant = from.Signed(),
            OffsetMinutes = (short)from.Small(),
        };
        var flags = from.Byte();
        (row.DateOnly, row.ReportedDateOnly) = ((flags & 1) != 0, (flags & 2) != 0);
        row.Result = (ConfirmatoryResult)from.Below(KindsOfResult);
        row.Reason = (SpecimenReason)from.Below(KindsOfReason);
        row.Stratum = codes.Strata[from.Below(codes.Strata.Length)];
        if ((flags & 4) != 0) row.Reported = from.Signed();
        return row;
    }
}
