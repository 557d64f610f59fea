using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json;

namespace ScreenStats.Counting.Programs.Reading;

/// <summary>Reads a JSON text into items that know their line: the library's own document forgets it.</summary>
internal static class JsonText
{
    /// <summary>Reads a text; comments and trailing commas are allowed.</summary>
    /// <exception cref="JsonException">The text is not JSON; <see cref="JsonException.LineNumber"/> counts from 0.</exception>
    public static JsonItem Read(string text)
    {
        var bytes = Encoding.UTF8.GetBytes(text.Length > 0 && text[0] == '\uFEFF' ? text[1..] : text);
        var reader = new Utf8JsonReader(bytes, new JsonReaderOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
        var lines = new LineCounter(bytes);
        reader.Read();
        var root = ReadValue(ref reader, lines, "", null);
        while (reader.Read())
        {
            // Anything but comments after the root throws.
        }

        return root;
    }

    private static JsonItem ReadValue(ref Utf8JsonReader reader, LineCounter lines, string path, long? keyLine)
    {
        var line = keyLine ?? lines.LineAt(reader.TokenStartIndex);
        switch (reader.TokenType)
        {
            case JsonTokenType.StartObject:
                var members = ImmutableArray.CreateBuilder<KeyValuePair<string, JsonItem>>();
                while (reader.Read() && reader.TokenType != JsonTokenType.EndObject)
                {
                    var memberLine = lines.LineAt(reader.TokenStartIndex);
                    var name = StringOf(ref reader, memberLine);
                    reader.Read();
                    members.Add(new(name, ReadValue(ref reader, lines, path.Length == 0 ? name : path + "." + name, memberLine)));
                }

                return new(JsonValueKind.Object, path, line) { Members = members.ToImmutable() };
            case JsonTokenType.StartArray:
                var items = ImmutableArray.CreateBuilder<JsonItem>();
                while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
                    items.Add(ReadValue(ref reader, lines, string.Create(CultureInfo.InvariantCulture, $"{path}[{items.Count}]"), null));
                return new(JsonValueKind.Array, path, line) { Items = items.ToImmutable() };
            case JsonTokenType.String:
                return new(JsonValueKind.String, path, line) { Text = StringOf(ref reader, line) };
            case JsonTokenType.Number:
                return new(JsonValueKind.Number, path, line) { Number = reader.TryGetDouble(out var number) ? number : double.PositiveInfinity };
            case JsonTokenType.True:
                return new(JsonValueKind.True, path, line);
            case JsonTokenType.False:
                return new(JsonValueKind.False, path, line);
            default:
                return new(JsonValueKind.Null, path, line);
        }
    }

    // Half of a surrogate pair written as an escape is legal JSON and no text.
    private static string StringOf(ref Utf8JsonReader reader, long line)
    {
        try
        {
            return reader.GetString() ?? "";
        }
        catch (InvalidOperationException failure)
        {
            throw new JsonException("A text holds an escape that is no character.", null, line - 1, null, failure);
        }
    }

    /// <summary>Turns byte positions, asked for in rising order, into line numbers.</summary>
    private sealed class LineCounter(byte[] bytes)
    {
        private long line = 1;
        private int position;

        public long LineAt(long index)
        {
            for (; position < index; position++)
            {
                if (bytes[position] == (byte)'\n') line++;
            }

            return line;
        }
    }
}
