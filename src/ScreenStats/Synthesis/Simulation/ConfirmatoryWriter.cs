using ScreenStats.Counting.Cubes;

namespace ScreenStats.Synthesis.Simulation;

/// <summary>Writes the confirmatory export: what was reported by the end of the program, in order of collection.</summary>
internal static class ConfirmatoryWriter
{
    public static void Write(
        SynthesisPlan plan, Calendar calendar, List<ConfirmatorySpecimen> specimens, RandomStream stream, TruthCounts truth, Stream target)
    {
        var dirt = plan.Dirt;
        var method = ExportWriter.Field(plan.Confirmation.Method);
        byte[][] strata = [.. plan.Audits.Select(audit => ExportWriter.Field(audit.Stratum))];
        using var writer = new ExportWriter(target, dirt.CarriageReturns.Contains("confirmatory"), dirt.ByteOrderMarks.Contains("confirmatory"));
        writer.Append("person,collected_at,result,reported_at,method,reason,sampling_stratum"u8);
        writer.EndRow();
        specimens.Sort(Compare);
        foreach (var specimen in specimens)
        {
            var faults = stream.Chance(dirt.UnreadableDates) ? RowFaults.UnreadableDate : RowFaults.None;
            if (stream.Chance(dirt.UnknownWords)) faults |= RowFaults.UnknownWord;
            Row(writer, calendar, specimen, faults, method, strata);
            truth.ConfirmatoryRows++;
            if (faults != RowFaults.None)
            {
                truth.ConfirmatorySetAside++;
                continue;
            }

            if (specimen.Reason == SpecimenReason.Audit) truth.Audits++;
            if (!stream.Chance(dirt.Duplicates)) continue;
            Row(writer, calendar, specimen, faults, method, strata);
            truth.ConfirmatoryRows++;
            truth.ConfirmatoryDuplicates++;
        }
    }

    private static int Compare(ConfirmatorySpecimen one, ConfirmatorySpecimen other)
    {
        var order = one.Minute.CompareTo(other.Minute);
        if (order == 0) order = one.Person.CompareTo(other.Person);
        if (order == 0) order = one.Reported.CompareTo(other.Reported);
        return order != 0 ? order : (one.Reason, one.Result).CompareTo((other.Reason, other.Result));
    }

    private static void Row(
        ExportWriter writer, Calendar calendar, in ConfirmatorySpecimen specimen, RowFaults faults, byte[] method, byte[][] strata)
    {
        writer.Add("p-"u8);
        writer.Hexadecimal(specimen.Person, 6);
        if ((faults & RowFaults.UnreadableDate) != 0) writer.Add("not noted"u8);
        else calendar.Moment(writer, specimen.Minute);
        writer.Add((faults & RowFaults.UnknownWord) != 0 ? "see report"u8 : specimen.Result switch
        {
            ConfirmatoryResult.Positive => "positive"u8,
            ConfirmatoryResult.Negative => "negative"u8,
            ConfirmatoryResult.Indeterminate => "indeterminate"u8,
            _ => "rejected"u8,
        });
        calendar.Moment(writer, specimen.Reported);
        writer.Add(method);
        writer.Add(specimen.Reason switch { SpecimenReason.Audit => "audit"u8, SpecimenReason.Other => "other"u8, _ => "follow-up"u8 });
        writer.Add(specimen.Stratum < 0 ? [] : strata[specimen.Stratum]);
        writer.EndRow();
    }
}
