using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using Undercowl.Knowledge.Tests.Fixtures;
using Undercowl.KnowledgeCompiler.Schemas;
using Undercowl.KnowledgeCompiler.Yaml;

namespace Undercowl.Knowledge.Tests.Compiler;

public sealed class SchemaTests
{
    private static readonly Dictionary<string, JsonSchema> Schemas = SchemaText.All().ToDictionary(s => s.Key[..s.Key.IndexOf('.', StringComparison.Ordinal)], s => JsonSchema.FromText(s.Value));

    [Fact]
    public void The_schemas_in_the_repository_are_those_that_the_types_give()
    {
        var there = Directory.EnumerateFiles(Repository.PathOf("knowledge/schema")).ToDictionary(f => Path.GetFileName(f)!, File.ReadAllText);
        Assert.Equal(SchemaText.All().OrderBy(s => s.Key), there.OrderBy(s => s.Key));
    }

    [Fact]
    public void Every_sample_file_passes_its_schema()
    {
        using var small = new SmallKnowledge();
        var files = Directory.EnumerateFiles(small.Folder, "*.yaml", SearchOption.AllDirectories).ToArray();
        Assert.Equal(40, files.Length);
        foreach (var file in files)
        {
            Assert.True(Passes(Path.GetRelativePath(small.Folder, file), File.ReadAllText(file)), file);
        }
    }

    [Theory]
    [InlineData("parts/ring.yaml", "prior: 0.07", "prioor: 0.07")]
    [InlineData("parts/ring.yaml", "prior: 0.07", "prior: seldom")]
    [InlineData("parts/ring.yaml", "id: ring", "id: Ring")]
    [InlineData("parts/ring.yaml", "name: piston ring", "name:")]
    [InlineData("sources.yaml", "kind: estimate", "kind: guess")]
    [InlineData("layouts/two.yaml", "[cyl:1, cyl:2]", "[1, 2]")]
    [InlineData("interlocks/fuel-vapour.yaml", "[rough, not]", "[1, 2]")]
    [InlineData("parts/coil.yaml", "when: {heat: hot}", "when: {heat: 90}")]
    public void A_broken_file_fails_its_schema(string file, string old, string changed)
    {
        using var small = new SmallKnowledge();
        small.Change(file, old, changed);
        Assert.False(Passes(file, small.Read(file)));
    }

    private static bool Passes(string file, string text)
    {
        var folder = Path.GetDirectoryName(file)!;
        var name = folder.Length == 0 ? Path.GetFileNameWithoutExtension(file) : folder == "remedies" ? "remedy" : folder == "quantities" ? "quantity" : folder.TrimEnd('s');
        var root = YamlText.Parse(file, text).Root ?? new JsonObject();
        using var document = JsonDocument.Parse(root.ToJsonString());
        return Schemas[name].Evaluate(document.RootElement).IsValid;
    }
}
