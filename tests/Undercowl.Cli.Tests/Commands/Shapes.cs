using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Json.Schema;

namespace Undercowl.Cli.Tests.Commands;

/// <summary>The forms of the <c>--json</c> documents: docs/terminal.schema.json, and what docs/terminal.md says of them.</summary>
internal static partial class Shapes
{
    private static readonly JsonObject Definitions = JsonNode.Parse(Repository.Read("docs/terminal.schema.json"))!["$defs"]!.AsObject();
    private static readonly string Page = Repository.Read("docs/terminal.md");

    private static readonly Lazy<Dictionary<string, JsonSchema>> Schemas = new(() => Names.ToDictionary(name => name, name => JsonSchema.FromText(
        new JsonObject { ["$ref"] = $"#/$defs/{name}", ["$defs"] = Definitions.DeepClone() }.ToJsonString())));

    /// <summary>The documents by name; definitions without a version are parts of documents.</summary>
    public static IEnumerable<string> Names => Definitions.Where(d => d.Value!["properties"]!["version"] is not null).Select(d => d.Key);

    public static bool IsValid(string name, JsonElement document)
    {
        lock (Schemas)
        {
            return Schemas.Value[name].Evaluate(document).IsValid;
        }
    }

    /// <summary>The page's table: command to the names of its documents.</summary>
    public static Dictionary<string, string[]> OnPage() => Rows().ToDictionary(r => r[0].Trim('`', ' ').Split(' ')[0], r => r[2].Split(',', StringSplitOptions.TrimEntries));

    /// <summary>Each command's whole name and its usage as the page has it.</summary>
    public static IEnumerable<(string Command, string Usage)> Usages() => Rows().Select(r => r[0].Trim('`', ' ')).Select(usage =>
        (string.Join(' ', usage.Split(' ').TakeWhile(w => w.All(c => char.IsLower(c) || c == '-') && !w.StartsWith('-'))), usage));

    /// <summary>What the page tells of a document: the words in code marks after its name in bold.</summary>
    public static HashSet<string> ToldMembers(string name)
    {
        var bullet = Bullet().Matches(Page).Single(m => m.Groups[1].Value == name).Groups[2].Value;
        return [.. Code().Matches(bullet).Select(m => m.Groups[1].Value)];
    }

    /// <summary>The member names of a document by its schema, without those of parts that the page tells with another.</summary>
    public static HashSet<string> SchemaMembers(string name)
    {
        var found = new HashSet<string>();
        Collect(Definitions[name]!);
        found.Remove("version");
        return found;

        void Collect(JsonNode at)
        {
            if ((string?)at["$ref"] is { } reference)
            {
                var of = Definitions[reference.Split('/')[^1]]!;
                if (((string?)of["$comment"])?.Split(", ").Contains(name) == true)
                {
                    Collect(of);
                }

                return;
            }

            foreach (var (member, value) in at["properties"]?.AsObject() ?? [])
            {
                found.Add(member);
                Collect(value!);
            }

            if (at["items"] is { } items)
            {
                Collect(items);
            }
        }
    }

    /// <summary>All members of a document or part by the schema, as <c>Belief.causes</c>; parts stand for themselves.</summary>
    public static HashSet<string> SchemaPaths()
    {
        var found = new HashSet<string>();
        foreach (var (name, definition) in Definitions)
        {
            Walk(definition!, name);
        }

        return found;

        void Walk(JsonNode at, string path)
        {
            foreach (var (member, value) in at["properties"]?.AsObject() ?? [])
            {
                found.Add($"{path}.{member}");
                Walk(value!, $"{path}.{member}");
            }

            if (at["items"] is { } items)
            {
                Walk(items, path);
            }
        }
    }

    /// <summary>The same paths, of the members that a document really has.</summary>
    public static void EmittedPaths(string name, JsonElement document, HashSet<string> found)
    {
        Walk(Definitions[name]!, name, document);

        void Walk(JsonNode schema, string path, JsonElement value)
        {
            if ((string?)schema["$ref"] is { } reference)
            {
                path = reference.Split('/')[^1];
                schema = Definitions[path]!;
            }

            if (value.ValueKind == JsonValueKind.Array && schema["items"] is { } items)
            {
                foreach (var item in value.EnumerateArray())
                {
                    Walk(items, path, item);
                }
            }
            else if (value.ValueKind == JsonValueKind.Object && schema["properties"] is { } properties)
            {
                foreach (var member in value.EnumerateObject())
                {
                    found.Add($"{path}.{member.Name}");
                    Walk(properties[member.Name]!, $"{path}.{member.Name}", member.Value);
                }
            }
        }
    }

    private static IEnumerable<string[]> Rows() => Page[Page.IndexOf("| command |", StringComparison.Ordinal)..].Split('\n').Skip(2).TakeWhile(l => l.StartsWith('|'))
        .Select(l => l.Replace("\\|", "/", StringComparison.Ordinal).Trim('|').Split('|', StringSplitOptions.TrimEntries));

    [GeneratedRegex(@"^- \*\*(\w+)\*\*(.*?)(?=^- |^\s*$)", RegexOptions.Singleline | RegexOptions.Multiline)]
    private static partial Regex Bullet();

    [GeneratedRegex("`([a-zA-Z]+)`")]
    private static partial Regex Code();
}
