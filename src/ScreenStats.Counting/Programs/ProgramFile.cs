using System.Text.Json;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs.Reading;

namespace ScreenStats.Counting.Programs;

/// <summary>Reads the text of a program file (program.json): what cannot be seen in the exports.</summary>
/// <remarks>Comments and trailing commas are allowed. A key written as null counts as not written.</remarks>
public static class ProgramFile
{
    /// <summary>Code of a text that is not JSON.</summary>
    public const string NotJsonCode = "program-file-not-json";

    /// <summary>Code of a key that no section knows.</summary>
    public const string UnknownKeyCode = "program-file-unknown-key";

    /// <summary>Code of a key given twice in one section.</summary>
    public const string RepeatedKeyCode = "program-file-repeated-key";

    /// <summary>Code of a value of the wrong type or outside what is possible.</summary>
    public const string WrongValueCode = "program-file-wrong-value";

    /// <summary>Code of a program that is not where it was looked for; found where files are opened.</summary>
    public const string NotFoundCode = "program-not-found";

    /// <summary>Code of a program file that cannot be opened, or is no UTF-8 text; found where files are opened.</summary>
    public const string UnreadableCode = "program-file-unreadable";

    /// <summary>Reads a program file.</summary>
    /// <param name="text">The whole text of the file.</param>
    /// <param name="fileName">Name of the file for messages, without its folder.</param>
    /// <returns>The settings, with defaults where the file says nothing.</returns>
    /// <exception cref="UnusableDataException">
    /// The text is not JSON, or a key or value does not fit; holds every problem in line order.
    /// </exception>
    public static ProgramSettings Parse(string text, string fileName = "program.json")
    {
        ArgumentNullException.ThrowIfNull(text);
        JsonItem root;
        try
        {
            root = JsonText.Read(text);
        }
        catch (JsonException failure)
        {
            var line = (failure.LineNumber ?? 0) + 1;
            throw new UnusableDataException(new Diagnostic(NotJsonCode, Severity.Error, fileName, line, "",
                "The program file is not valid JSON here. Look for a missing comma, quote or bracket on this line or the one before."));
        }

        var problems = new ProgramProblems(fileName);
        var settings = ProgramReading.Read(root, problems);
        return problems.Any ? throw new UnusableDataException(problems.InOrder()) : settings;
    }

    /// <summary>The JSON Schema of the program file, for editors that check while one types.</summary>
    /// <returns>The text of the schema.</returns>
    public static string ReadSchema()
    {
        using var stream = typeof(ProgramFile).Assembly.GetManifestResourceStream("ScreenStats.Counting.Programs.program.schema.json")
            ?? throw new InvalidOperationException("The schema is not embedded in the assembly.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return System.Text.Encoding.UTF8.GetString(bytes);
    }
}
