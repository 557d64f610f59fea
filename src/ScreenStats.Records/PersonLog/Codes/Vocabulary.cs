namespace ScreenStats.Records.PersonLog.Codes;

/// <summary>Texts and their codes, counted up from 0. Safe for several threads; a reader keeps its own cache in front.</summary>
internal sealed class Vocabulary
{
    private readonly Lock gate = new();
    private readonly List<string> texts = [];
    private readonly Dictionary<string, int> codes = new(StringComparer.Ordinal);

    /// <param name="first">The text of code 0, where one is reserved.</param>
    public Vocabulary(string? first = null)
    {
        if (first is not null) Code(first);
    }

    public int Count
    {
        get
        {
            lock (gate) return texts.Count;
        }
    }

    public string this[int code]
    {
        get
        {
            lock (gate) return texts[code];
        }
    }

    public int Code(string text)
    {
        lock (gate)
        {
            if (codes.TryGetValue(text, out var code)) return code;
            code = texts.Count;
            texts.Add(text);
            codes.Add(text, code);
            return code;
        }
    }

    public string[] ToArray()
    {
        lock (gate) return [.. texts];
    }
}
