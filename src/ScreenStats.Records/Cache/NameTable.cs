using ScreenStats.Records.PersonLog.Codes;

namespace ScreenStats.Records.Cache;

/// <summary>The names of a vocabulary that an entry uses, numbered from 0 in the order in which they were met.</summary>
internal sealed class NameTable
{
    private readonly List<int> codes = [];
    private int[] numbers = [];

    /// <summary>Codes in the vocabulary, by number.</summary>
    public IReadOnlyList<int> Codes => codes;

    /// <summary>The number of a code.</summary>
    public int Number(int code)
    {
        if (code < numbers.Length && numbers[code] > 0) return numbers[code] - 1;
        if (code >= numbers.Length) Array.Resize(ref numbers, Math.Max(code + 1, Math.Max(64, 2 * numbers.Length)));
        codes.Add(code);
        numbers[code] = codes.Count;
        return codes.Count - 1;
    }

    /// <summary>The number of a code; null where it was not met.</summary>
    public int? Known(int code) => code < numbers.Length && numbers[code] > 0 ? numbers[code] - 1 : null;

    public void Write(PackedWriter to, Vocabulary vocabulary)
    {
        to.Count(codes.Count);
        foreach (var code in codes) to.Text(vocabulary[code]);
    }

    /// <summary>The codes that the names of an entry have in this run, by number.</summary>
    public static int[] Read(ref PackedReader from, Vocabulary vocabulary)
    {
        var codes = new int[from.Count()];
        for (var number = 0; number < codes.Length; number++) codes[number] = vocabulary.Code(from.Text());
        return codes;
    }
}
