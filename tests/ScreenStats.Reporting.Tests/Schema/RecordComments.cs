using System.Reflection;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace ScreenStats.Reporting.Tests.Schema;

/// <summary>What the XML comments beside the assemblies say of types, properties and words.</summary>
internal sealed partial class RecordComments
{
    private readonly Dictionary<string, XElement> members = new(StringComparer.Ordinal);

    public RecordComments(params ReadOnlySpan<Assembly> assemblies)
    {
        foreach (var assembly in assemblies)
        {
            var file = Path.ChangeExtension(assembly.Location, ".xml");
            foreach (var member in XDocument.Load(file).Descendants("member")) members[(string)member.Attribute("name")!] = member;
        }
    }

    public string? Of(Type type) => Summary("T:" + Name(type));

    public string? Of(FieldInfo word) => Summary($"F:{Name(word.DeclaringType!)}.{word.Name}");

    /// <summary>A property, or the one that it carries out.</summary>
    public string? Of(PropertyInfo property) =>
        Summary($"P:{Name(property.DeclaringType!)}.{property.Name}")
        ?? property.DeclaringType!.GetInterfaces().Select(face => face.GetProperty(property.Name)).OfType<PropertyInfo>().Select(face => Summary($"P:{Name(face.DeclaringType!)}.{face.Name}")).FirstOrDefault(text => text is not null);

    private string? Summary(string member) =>
        members.TryGetValue(member, out var found) && found.Element("summary") is { } summary ? Blank().Replace(string.Concat(summary.Nodes().Select(Words)), " ").Trim() : null;

    private static string Words(XNode node) => node switch
    {
        XText text => text.Value,
        XElement { Name.LocalName: "see" } see => Last(((string?)see.Attribute("cref") ?? (string?)see.Attribute("langword"))!),
        XElement { Name.LocalName: "paramref" } reference => (string)reference.Attribute("name")!,
        XElement other => string.Concat(other.Nodes().Select(Words)),
        _ => "",
    };

    private static string Last(string reference) => reference[(reference.LastIndexOf('.') + 1)..];

    private static string Name(Type type) => (type.IsConstructedGenericType ? type.GetGenericTypeDefinition() : type).FullName!.Replace('+', '.');

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blank();
}
