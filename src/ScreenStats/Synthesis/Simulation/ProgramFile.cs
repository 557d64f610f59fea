using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace ScreenStats.Synthesis.Simulation;

/// <summary>The program file of a synthetic program: what the fictional employer believes, not what is true.</summary>
internal static class ProgramFile
{
    public static string Text(SynthesisPlan plan)
    {
        using var bytes = new MemoryStream();
        var options = new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
        using (var writer = new Utf8JsonWriter(bytes, options))
        {
            writer.WriteStartObject();
            writer.WriteString("title", plan.Title);
            writer.WriteString("timeZone", plan.TimeZone);
            writer.WriteString("dataAsOf", plan.DataAsOf.ToString("yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture));
            Exports(writer, plan);
            Screens(writer, plan);
            ConfirmatoryTest(writer, plan);
            Prevalence(writer, plan);
            writer.WriteStartObject("policy");
            writer.WriteNumber("confirmWithinHours", 72);
            writer.WriteNumber("confirmBeforeHours", 2);
            writer.WriteNumber("auditWithinHours", 24);
            writer.WriteNumber("isolationDays", plan.Confirmation.IsolationDays);
            writer.WriteStartArray("controlsRequired");
            writer.WriteStringValue("new-lot");
            writer.WriteStringValue("new-operator");
            writer.WriteEndArray();
            writer.WriteEndObject();
            SurroundingsText.Write(writer, plan);
            writer.WriteStartObject("report");
            writer.WriteNumber("confidence", 0.95);
            writer.WriteString("period", "week");
            writer.WriteNumber("suppressBelow", 0);
            writer.WriteEndObject();
            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(bytes.ToArray()) + "\n";
    }

    private static void Exports(Utf8JsonWriter writer, SynthesisPlan plan)
    {
        if (plan.ScreeningHeadings.IsEmpty && plan.ScreeningWords.IsEmpty) return;
        writer.WriteStartObject("exports");
        writer.WriteStartObject("screening");
        if (!plan.ScreeningHeadings.IsEmpty)
        {
            writer.WriteStartObject("columns");
            foreach (var (name, heading) in plan.ScreeningHeadings) writer.WriteString(name, heading);
            writer.WriteEndObject();
        }

        if (!plan.ScreeningWords.IsEmpty)
        {
            writer.WriteStartObject("words");
            foreach (var (word, written) in plan.ScreeningWords) writer.WriteString(written, word);
            writer.WriteEndObject();
        }

        writer.WriteEndObject();
        writer.WriteEndObject();
    }

    private static void Screens(Utf8JsonWriter writer, SynthesisPlan plan)
    {
        writer.WriteStartArray("screens");
        foreach (var kit in plan.Kits)
        {
            writer.WriteStartObject();
            writer.WriteString("name", kit.Name);
            writer.WriteStartArray("lots");
            foreach (var lot in plan.Lots.Where(lot => lot.Kit == kit.Name)) writer.WriteStringValue(lot.Name);
            writer.WriteEndArray();
            Accuracy(writer, kit.StatedSensitivity, kit.StatedSpecificity, kit.Source);
            writer.WriteStartArray("readWindowMinutes");
            writer.WriteNumberValue(kit.ReadFromMinutes);
            writer.WriteNumberValue(kit.ReadToMinutes);
            writer.WriteEndArray();
            writer.WriteNumber("runsPerKit", kit.RunsPerKit);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void ConfirmatoryTest(Utf8JsonWriter writer, SynthesisPlan plan)
    {
        var confirmation = plan.Confirmation;
        if (confirmation.StatedSensitivity is null && confirmation.StatedSpecificity is null) return;
        writer.WriteStartObject("confirmatoryTest");
        Accuracy(writer, confirmation.StatedSensitivity, confirmation.StatedSpecificity, confirmation.Source);
        writer.WriteEndObject();
    }

    private static void Accuracy(Utf8JsonWriter writer, string? sensitivity, string? specificity, string source)
    {
        if (sensitivity is not null) writer.WriteString("sensitivity", sensitivity);
        if (specificity is not null) writer.WriteString("specificity", specificity);
        if (sensitivity is not null || specificity is not null) writer.WriteString("source", source);
    }

    private static void Prevalence(Utf8JsonWriter writer, SynthesisPlan plan)
    {
        if (plan.Prevalence is not { } prevalence) return;
        writer.WriteStartObject("prevalence");
        writer.WriteNumber("value", prevalence.Value);
        writer.WriteNumber("lower", prevalence.Lower);
        writer.WriteNumber("upper", prevalence.Upper);
        writer.WriteString("source", prevalence.Source);
        writer.WriteEndObject();
    }
}
