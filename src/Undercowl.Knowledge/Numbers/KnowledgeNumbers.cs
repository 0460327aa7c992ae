using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Undercowl.Knowledge.Checking;

namespace Undercowl.Knowledge;

/// <summary>Finds the numbers of the knowledge, and puts others in their place.</summary>
public static class KnowledgeNumbers
{
    /// <summary>What an entry of a list goes by, the first that it has.</summary>
    private static readonly string[] Names = ["id", "item", "name", "level", "aspect", "quantity"];

    /// <summary>All numbers, in the order of the document.</summary>
    public static IEnumerable<KnowledgeNumber> Of(KnowledgeBase knowledge) => Of(Tree(knowledge));

    /// <summary>The same of a document in the form of <see cref="KnowledgeJson"/>.</summary>
    public static IEnumerable<KnowledgeNumber> Of(JsonNode root) => Under(root, "", "", null);

    /// <summary>
    /// The knowledge with one number changed. Where the number is the chance of a choice, the other choices at the same level share out
    /// what is left in their old proportions. Null where there is no number at the address.
    /// </summary>
    /// <exception cref="JsonException">The value is none that can stand there.</exception>
    public static KnowledgeBase? With(KnowledgeBase knowledge, string address, double value)
    {
        ArgumentNullException.ThrowIfNull(address);
        var root = Tree(knowledge);
        if (Of(root).FirstOrDefault(n => n.Address == address) is not { } number)
        {
            return null;
        }

        var holder = Holder(root, number.Path, out var key);
        if (IsChoice(address))
        {
            var left = holder.AsObject().Where(m => m.Key != key).Sum(m => Number(m.Value!));
            foreach (var other in holder.AsObject().Select(m => m.Key).Where(k => k != key).ToArray())
            {
                holder[other] = Number(holder[other]!) * (1 - value) / left;
            }
        }

        if (holder is JsonArray list)
        {
            list[int.Parse(key, CultureInfo.InvariantCulture)] = value;
        }
        else
        {
            holder[key] = value;
        }

        return root.Deserialize(KnowledgeJson.Default.KnowledgeBase);
    }

    /// <summary>True when the number is one chance of a row that adds up to 1.</summary>
    public static bool IsChoice(string address)
    {
        ArgumentNullException.ThrowIfNull(address);
        return (address.StartsWith("checks/", StringComparison.Ordinal) && address.Contains("/likelihood/given/", StringComparison.Ordinal))
            || (address.StartsWith("intake/", StringComparison.Ordinal) && (address.Contains("/given/", StringComparison.Ordinal) || address.Contains("/usually/", StringComparison.Ordinal)));
    }

    /// <summary>What an entry of a list goes by in addresses: its name, and for the second of that name <c>#2</c>.</summary>
    public static string Key<T>(IReadOnlyList<T> list, T entry, Func<T, string> name)
    {
        ArgumentNullException.ThrowIfNull(list);
        ArgumentNullException.ThrowIfNull(name);
        var key = name(entry);
        var before = list.TakeWhile(e => !ReferenceEquals(e, entry)).Count(e => name(e) == key);
        return before == 0 ? key : string.Create(CultureInfo.InvariantCulture, $"{key}#{before + 1}");
    }

    /// <summary>Whole numbers may be held as such.</summary>
    private static double Number(JsonNode node) => double.Parse(node.ToJsonString(), CultureInfo.InvariantCulture);

    private static JsonNode Tree(KnowledgeBase knowledge) => JsonNode.Parse(KnowledgeJson.Write(knowledge))!;

    private static IEnumerable<KnowledgeNumber> Under(JsonNode? node, string address, string pointer, string? source)
    {
        switch (node)
        {
            case JsonObject members:
                var own = members["source"] is JsonValue named && named.TryGetValue(out string? text) ? text : source;
                return members.SelectMany(m => Under(m.Value, address.Length == 0 ? m.Key : $"{address}/{m.Key}", pointer.Member(m.Key), own));
            case JsonArray list:
                var keys = Keys(list);
                return list.SelectMany((entry, i) => Under(entry, $"{address}/{keys[i]}", pointer.Entry(i), source));
            case JsonValue value when value.GetValueKind() == JsonValueKind.Number:
                return [new KnowledgeNumber(address, pointer, Number(value), source)];
            default:
                return [];
        }
    }

    private static string[] Keys(JsonArray list)
    {
        var seen = new Dictionary<string, int>();
        return [.. list.Select((entry, i) =>
        {
            var name = entry is JsonObject members && Names.FirstOrDefault(n => members[n] is JsonValue) is { } by ? members[by]!.ToString() : i.ToString(CultureInfo.InvariantCulture);
            var count = seen[name] = seen.GetValueOrDefault(name) + 1;
            return count == 1 ? name : string.Create(CultureInfo.InvariantCulture, $"{name}#{count}");
        })];
    }

    private static JsonNode Holder(JsonNode root, string pointer, out string key)
    {
        var parts = pointer.Split('/')[1..].Select(p => p.Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal)).ToArray();
        var node = root;
        foreach (var part in parts[..^1])
        {
            node = node is JsonArray list ? list[int.Parse(part, CultureInfo.InvariantCulture)]! : node[part]!;
        }

        key = parts[^1];
        return node;
    }
}
