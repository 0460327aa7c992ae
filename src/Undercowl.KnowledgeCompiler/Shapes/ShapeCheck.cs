using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization.Metadata;
using Undercowl.Knowledge;
using Undercowl.Knowledge.Checking;

namespace Undercowl.KnowledgeCompiler.Shapes;

/// <summary>
/// Holds a tree against the types it is to become, by the same metadata that will read it: unknown and missing members,
/// values of the wrong sort. The reader itself would stop at the first; this names all.
/// </summary>
internal static class ShapeCheck
{
    /// <summary>The places that do not fit, as JSON Pointers under <paramref name="pointer"/>.</summary>
    public static IEnumerable<KnowledgeFault> Faults(JsonNode? node, Type type, string pointer) => Of(node, Info(type), pointer);

    public static JsonTypeInfo Info(Type type) => KnowledgeJson.Default.Options.GetTypeInfo(Nullable.GetUnderlyingType(type) ?? type);

    private static IEnumerable<KnowledgeFault> Of(JsonNode? node, JsonTypeInfo info, string pointer)
    {
        if (node is null)
        {
            return [new KnowledgeFault(pointer, $"{Pointers.Last(pointer)} has no value", "give it one, or take the line out")];
        }

        return info.Kind switch
        {
            JsonTypeInfoKind.Object => node is JsonObject record ? Members(record, info, pointer) : [Wrong(node, "names with values, one to a line", pointer)],
            JsonTypeInfoKind.Dictionary => node is JsonObject map ? map.SelectMany(p => Of(p.Value, Info(info.ElementType!), Pointers.Member(pointer, p.Key))) : [Wrong(node, "names with values", pointer)],
            JsonTypeInfoKind.Enumerable => node is JsonArray list ? list.SelectMany((n, i) => Of(n, Info(info.ElementType!), Pointers.Entry(pointer, i))) : [Wrong(node, "a list", pointer)],
            _ => Value(node, info, pointer) is { } fault ? [fault] : [],
        };
    }

    private static IEnumerable<KnowledgeFault> Members(JsonObject record, JsonTypeInfo info, string pointer)
    {
        foreach (var (name, value) in record)
        {
            var member = info.Properties.FirstOrDefault(p => p.Name == name);
            if (member is null)
            {
                yield return new KnowledgeFault(
                    Pointers.Member(pointer, name), $"\"{name}\" is not known here", NearNames.Mend(name, info.Properties.Select(p => p.Name).Where(p => !record.ContainsKey(p))));
                continue;
            }

            foreach (var fault in Of(value, Info(member.PropertyType), Pointers.Member(pointer, name)))
            {
                yield return fault;
            }
        }

        foreach (var member in info.Properties.Where(p => p.IsRequired && !record.ContainsKey(p.Name)))
        {
            yield return new KnowledgeFault(pointer, $"\"{member.Name}\" is missing", $"add {member.Name}: {Wanted(Info(member.PropertyType))}");
        }
    }

    private static KnowledgeFault? Value(JsonNode node, JsonTypeInfo info, string pointer)
    {
        if (info.Type.IsEnum)
        {
            return Fits(node, info) ? null
                : new KnowledgeFault(pointer, $"{Shown(node)} is not a {Words(info.Type.Name)}", NearNames.Mend(Shown(node), Names(info.Type)));
        }

        if (!Fits(node, info))
        {
            return Wrong(node, Wanted(info), pointer);
        }

        return node is JsonArray { Count: 0 } || (node is JsonValue && string.IsNullOrWhiteSpace(node.ToString()))
            ? new KnowledgeFault(pointer, $"{Pointers.Last(pointer)} is empty", "write something there, or take the line out")
            : null;
    }

    private static bool Fits(JsonNode node, JsonTypeInfo info)
    {
        try
        {
            return node.Deserialize(info) is not null;
        }
        catch (JsonException)
        {
            return false;
        }
    }

    private static KnowledgeFault Wrong(JsonNode node, string wanted, string pointer)
    {
        var mend = node is JsonValue value && value.GetValueKind() != JsonValueKind.String && wanted.StartsWith("a text", StringComparison.Ordinal)
            ? $"put quotes around it: \"{Shown(node)}\""
            : $"write {wanted}";
        return new KnowledgeFault(pointer, $"{Pointers.Last(pointer)} is {Shown(node)}, but {wanted} is wanted", mend);
    }

    private static string Wanted(JsonTypeInfo info) => info.Kind switch
    {
        JsonTypeInfoKind.Object or JsonTypeInfoKind.Dictionary => "names with values",
        JsonTypeInfoKind.Enumerable => "a list",
        _ when info.Type.IsEnum => string.Join(" or ", Names(info.Type)),
        _ when info.Type == typeof(string) => "a text",
        _ when info.Type == typeof(OneOrMore) => "a text or a list of texts",
        _ when info.Type == typeof(bool) => "true or false",
        _ when info.Type == typeof(int) => "a whole number",
        _ => "a number",
    };

    private static string Shown(JsonNode node) => node switch
    {
        JsonObject => "names with values",
        JsonArray => "a list",
        _ => node.ToString(),
    };

    private static IEnumerable<string> Names(Type type) => Enum.GetNames(type).Select(JsonNamingPolicy.KebabCaseLower.ConvertName);

    private static string Words(string typeName) => JsonNamingPolicy.KebabCaseLower.ConvertName(typeName).Replace('-', ' ');
}
