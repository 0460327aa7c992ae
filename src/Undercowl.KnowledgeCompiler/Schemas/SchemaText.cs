using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using Undercowl.Knowledge;

namespace Undercowl.KnowledgeCompiler.Schemas;

/// <summary>
/// JSON Schemas (draft 2020-12) of the knowledge files for editors, made from the types. They know the shape of a file only:
/// whether what it names exists is for the compiler to say.
/// </summary>
public static class SchemaText
{
    private const string Draft = "https://json-schema.org/draft/2020-12/schema";
    private const string IdPattern = "^[a-z][a-z0-9-]*$";

    private static readonly JsonSchemaExporterOptions Exporting = new() { TreatNullObliviousAsNonNullable = true, TransformSchemaNode = Transform };

    /// <summary>File name, such as <c>check.schema.json</c>, to text, for each kind of knowledge file.</summary>
    public static IReadOnlyDictionary<string, string> All() => FileKind.All.ToDictionary(kind => $"{kind.SchemaName}.schema.json", Of);

    private static string Of(FileKind kind)
    {
        var schema = (JsonObject)KnowledgeJson.Default.Options.GetJsonSchemaAsNode(kind.File, Exporting);
        schema.Insert(0, "$schema", Draft);
        schema.Insert(1, "title", kind.Sort == FileSort.Folder ? $"A file of knowledge/{kind.Name}/" : $"knowledge/{kind.Name}.yaml");
        return schema.ToJsonString(new JsonSerializerOptions { WriteIndented = true, NewLine = "\n" }) + "\n";
    }

    private static JsonNode Transform(JsonSchemaExporterContext context, JsonNode schema)
    {
        if (context.TypeInfo.Type == typeof(OneOrMore))
        {
            return OneOrMore();
        }

        // What has no value is left out of the files, so null is no value of anything.
        if (schema is JsonObject node && node["type"] is JsonArray types)
        {
            JsonNode[] kept = [.. types.Where(t => t!.ToString() != "null").Select(t => t!.DeepClone())];
            node["type"] = kept is [var only] ? only : new JsonArray(kept);
        }

        // The exporter knows nothing of what a converter reads and leaves such members of a map open.
        if (schema is JsonObject map && context.TypeInfo.ElementType == typeof(OneOrMore))
        {
            map["additionalProperties"] = OneOrMore();
        }

        if (schema is JsonObject id && context.PropertyInfo?.Name == "id")
        {
            id["pattern"] = IdPattern;
        }

        return schema;
    }

    private static JsonObject OneOrMore()
    {
        JsonObject text = new() { ["type"] = "string" };
        return new JsonObject
        {
            ["anyOf"] = new JsonArray(text, new JsonObject { ["type"] = "array", ["items"] = text.DeepClone(), ["minItems"] = 1 }),
        };
    }
}
