using System.Globalization;
using System.IO.Compression;
using System.Text;
using Hl7.Fhir.Model;
using Hl7.Fhir.Serialization;
using MiniExcelLibs;

namespace ScreenStats.Tests.Formats;

/// <summary>One way of writing the small program. Workbooks and resources are written by libraries that are not the ones that read them.</summary>
internal sealed record Dialect(string Name)
{
    public string Extension { get; init; } = "csv";

    public string Delimiter { get; init; } = ",";

    public string LineEnd { get; init; } = "\n";

    public Encoding Encoding { get; init; } = new UTF8Encoding(false);

    public string Before { get; init; } = "";

    public bool AllQuoted { get; init; }

    public bool Turned { get; init; }

    public string Date { get; init; } = "yyyy-MM-dd'T'HH:mm";

    public Func<string, string> Heading { get; init; } = heading => heading;

    public Func<string, string> Word { get; init; } = word => word;

    public string Program { get; init; } = "";

    public int Compressed { get; init; }

    public bool Resources { get; init; }

    public void Write(string folder)
    {
        File.WriteAllText(Path.Combine(folder, "program.json"), $"{{ \"title\": \"A small works\", \"timeZone\": \"Europe/Vienna\"{Program} }}");
        Write(folder, "screening", SmallProgram.ScreeningHeadings, SmallProgram.Runs.Select(run => new object[] { run.Person, run.Site, run.At, run.Result, run.Lot, run.Symptomatic, run.Id }));
        if (Resources) WriteResources(folder);
        else Write(folder, "confirmatory", SmallProgram.ConfirmatoryHeadings, SmallProgram.Specimens.Select(one => new object[] { one.Person, one.At, one.Result, one.Reported, one.Method }));
    }

    private void Write(string folder, string name, string[] headings, IEnumerable<object[]> rows)
    {
        if (Turned)
        {
            headings = [.. headings.Reverse()];
            rows = rows.Select(row => row.Reverse().ToArray());
        }

        using var stream = new MemoryStream();
        if (Extension == "xlsx")
        {
            stream.SaveAs(rows.Select(row => headings.Zip(row).ToDictionary(cell => Heading(cell.First), cell => cell.Second is string text ? Word(text) : cell.Second)));
        }
        else
        {
            using var writer = new StreamWriter(stream, Encoding, leaveOpen: true) { NewLine = LineEnd };
            writer.Write(Before.Replace("\n", LineEnd, StringComparison.Ordinal));
            writer.WriteLine(string.Join(Delimiter, headings.Select(heading => Quoted(Heading(heading)))));
            foreach (var row in rows) writer.WriteLine(string.Join(Delimiter, row.Select(cell => Quoted(Text(cell)))));
        }

        Save(Path.Combine(folder, $"{name}.{Extension}"), stream.ToArray());
    }

    private void WriteResources(string folder)
    {
        var text = new StringBuilder();
        var serializer = new FhirJsonSerializer();
        foreach (var one in SmallProgram.Specimens)
        {
            var code = one.Result switch { "positive" => "260373001", "negative" => "260415000", _ => "419984006" };
            var observation = new Observation
            {
                Status = ObservationStatus.Final,
                Code = new CodeableConcept("http://loinc.org", "94500-6"),
                Subject = new ResourceReference("Patient/" + one.Person),
                Effective = new FhirDateTime(new DateTimeOffset(one.At, TimeSpan.FromHours(1))),
                Issued = new DateTimeOffset(one.Reported, TimeSpan.FromHours(1)),
                Method = one.Method.Length > 0 ? new CodeableConcept { Text = one.Method } : null,
            };
            if (one.At.Day % 2 == 0) observation.Value = new CodeableConcept("http://snomed.info/sct", code);
            else
            {
                var flag = one.Result switch { "positive" => "POS", "negative" => "NEG", _ => "IND" };
                observation.Interpretation.Add(new CodeableConcept("http://terminology.hl7.org/CodeSystem/v3-ObservationInterpretation", flag));
            }

            text.Append(serializer.SerializeToString(observation)).Append('\n');
        }

        Save(Path.Combine(folder, "confirmatory.ndjson"), Encoding.UTF8.GetBytes(text.ToString()));
    }

    private void Save(string path, byte[] bytes)
    {
        if (Compressed == 0)
        {
            File.WriteAllBytes(path, bytes);
            return;
        }

        // As many members as are asked for, one behind the other.
        using var file = File.Create(path + ".gz");
        var size = (bytes.Length / Compressed) + 1;
        for (var from = 0; from < bytes.Length; from += size)
        {
            using var gzip = new GZipStream(file, CompressionLevel.Optimal, leaveOpen: true);
            gzip.Write(bytes.AsSpan(from, Math.Min(size, bytes.Length - from)));
        }
    }

    private string Text(object cell) => cell switch
    {
        DateTime moment => moment.ToString(Date, CultureInfo.InvariantCulture),
        bool yes => yes ? "true" : "false",
        _ => Word((string)cell),
    };

    private string Quoted(string text) =>
        AllQuoted || text.Contains(Delimiter, StringComparison.Ordinal) || text.AsSpan().IndexOfAny('"', '\r', '\n') >= 0
            ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
            : text;
}
