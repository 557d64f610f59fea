using System.Text.Json;

namespace ScreenStats.Synthesis.Simulation;

/// <summary>Changes, outbreaks, the community rate and the sections on how often to screen and on costs, as the program file states them.</summary>
internal static class SurroundingsText
{
    public static void Write(Utf8JsonWriter writer, SynthesisPlan plan)
    {
        Changes(writer, plan);
        if (PlanSurroundings.InProgramFile(plan)) Outbreaks(writer, plan);
        Community(writer, plan);
        Section(writer, "cadence", plan.Cadence);
        Section(writer, "costs", plan.Costs);
    }

    private static void Section(Utf8JsonWriter writer, string name, JsonElement? written)
    {
        if (written is not { } section) return;
        writer.WritePropertyName(name);
        section.WriteTo(writer);
    }

    private static void Changes(Utf8JsonWriter writer, SynthesisPlan plan)
    {
        if (plan.Changes.IsEmpty) return;
        writer.WriteStartArray("changes");
        foreach (var change in plan.Changes)
        {
            writer.WriteStartObject();
            writer.WriteString("on", Dates.Text(change.On));
            writer.WriteString("what", change.What);
            if (!change.Sites.IsEmpty)
            {
                writer.WriteStartArray("sites");
                foreach (var site in change.Sites) writer.WriteStringValue(site);
                writer.WriteEndArray();
            }

            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void Outbreaks(Utf8JsonWriter writer, SynthesisPlan plan)
    {
        writer.WriteStartArray("outbreaks");
        foreach (var outbreak in plan.Outbreaks)
        {
            writer.WriteStartObject();
            writer.WriteString("site", outbreak.Site);
            writer.WriteString("from", Dates.Text(outbreak.From));
            writer.WriteString("to", Dates.Text(outbreak.To));
            if (outbreak.Note.Length > 0) writer.WriteString("note", outbreak.Note);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void Community(Utf8JsonWriter writer, SynthesisPlan plan)
    {
        if (plan.Community is not { } community) return;
        writer.WriteStartObject("community");
        writer.WriteString("measure", community.Measure);
        writer.WriteString("source", community.Source);
        writer.WriteStartArray("values");
        foreach (var value in community.Values)
        {
            writer.WriteStartObject();
            writer.WriteString("from", Dates.Text(value.From));
            writer.WriteNumber("value", value.Value);
            writer.WriteNumber("lower", value.Lower);
            writer.WriteNumber("upper", value.Upper);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }
}
