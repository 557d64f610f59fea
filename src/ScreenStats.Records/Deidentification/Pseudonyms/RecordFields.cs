namespace ScreenStats.Records.Deidentification.Pseudonyms;

/// <summary>Where the fields of a record stand, with their quotes: by the same rules as <see cref="Formats.RecordSplitter"/>.</summary>
internal static class RecordFields
{
    /// <summary>Fills in where each field begins and ends; false where a quote is out of place.</summary>
    public static bool Find(ReadOnlySpan<byte> record, byte delimiter, List<(int Start, int End)> fields)
    {
        fields.Clear();
        for (var at = 0; ;)
        {
            var start = at;
            if (at < record.Length && record[at] == (byte)'"')
            {
                at = Closing(record, at + 1);
                if (at < 0) return false;
                at++;
                if (at < record.Length && record[at] != delimiter) return false;
            }
            else
            {
                var step = record[at..].IndexOf(delimiter);
                at = step < 0 ? record.Length : at + step;
            }

            fields.Add((start, at));
            if (at == record.Length) return true;
            at++;
        }
    }

    private static int Closing(ReadOnlySpan<byte> record, int from)
    {
        for (var at = from; at < record.Length; at++)
        {
            if (record[at] != (byte)'"') continue;
            if (at + 1 == record.Length || record[at + 1] != (byte)'"') return at;
            at++;
        }

        return -1;
    }
}
