namespace ScreenStats.Records.Formats;

/// <summary>What is wrong with the quotes of a record.</summary>
/// <param name="Malformed">True where text follows a closing quote, or a quote is never closed. A quote within plain text is no fault.</param>
/// <param name="Spans">True where the faulty field also holds a line break: then the rows behind it cannot be trusted.</param>
/// <param name="LineBreaksBefore">Line breaks of the record before the quote that opened the faulty field.</param>
internal readonly record struct QuoteFault(bool Malformed, bool Spans, int LineBreaksBefore)
{
    /// <summary>Looks at a record byte by byte; of several faults one that spans lines goes first.</summary>
    public static QuoteFault Of(ReadOnlySpan<byte> record, byte delimiter)
    {
        var fault = default(QuoteFault);
        for (var at = 0; at < record.Length;)
        {
            if (record[at] != (byte)'"')
            {
                var step = record[at..].IndexOf(delimiter);
                if (step < 0) break;
                at += step + 1;
                continue;
            }

            var opened = at;
            var closed = Closing(record, at + 1);
            var spans = record[opened..closed].IndexOfAny((byte)'\n', (byte)'\r') >= 0;
            if (closed == record.Length || (closed + 1 < record.Length && record[closed + 1] != delimiter))
            {
                if (!fault.Malformed || (spans && !fault.Spans)) fault = new QuoteFault(true, spans, LineEnds.Count(record[..opened]));
                if (spans) return fault;
            }

            var next = closed == record.Length ? -1 : record[(closed + 1)..].IndexOf(delimiter);
            if (next < 0) break;
            at = closed + 1 + next + 1;
        }

        return fault;
    }

    private static int Closing(ReadOnlySpan<byte> record, int from)
    {
        for (var at = from; at < record.Length; at++)
        {
            if (record[at] != (byte)'"') continue;
            if (at + 1 < record.Length && record[at + 1] == (byte)'"') at++;
            else return at;
        }

        return record.Length;
    }
}
