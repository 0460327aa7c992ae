using System.Text.Json.Nodes;
using Undercowl.KnowledgeCompiler.Yaml;

namespace Undercowl.Knowledge.Tests.Compiler;

public sealed class CoreSchemaTests
{
    // certified: YAML 1.2.2, 10.3.2 "Tag Resolution" of the core schema, and its example 10.9 (the values of which are these).
    [Theory]
    [InlineData("0", "0")]
    [InlineData("0o7", "7")]
    [InlineData("0x3A", "58")]
    [InlineData("-19", "-19")]
    [InlineData("0.", "0")]
    [InlineData("-0.0", "-0")]
    [InlineData(".5", "0.5")]
    [InlineData("+12e03", "12000")]
    [InlineData("-2E+05", "-200000")]
    [InlineData("true", "true")]
    [InlineData("False", "false")]
    public void Plain_scalars_are_numbers_and_truth_values_by_the_core_schema(string plain, string json) =>
        Assert.Equal(json, Value(plain)!.ToJsonString());

    [Theory]
    [InlineData("yes")]
    [InlineData("no")]
    [InlineData("on")]
    [InlineData("off")]
    [InlineData("1 2")]
    [InlineData("1e")]
    [InlineData("0x")]
    [InlineData("12:30")]
    [InlineData("1_000")]
    [InlineData("2024-01-01")]
    public void All_else_is_text(string plain) => Assert.Equal(plain, Value(plain)!.GetValue<string>());

    [Theory]
    [InlineData("~")]
    [InlineData("null")]
    [InlineData("")]
    public void Null_is_null(string plain) => Assert.Null(Value(plain));

    [Fact]
    public void What_stands_in_quotes_is_text() => Assert.Equal("true", Value("\"true\"")!.GetValue<string>());

    private static JsonNode? Value(string plain) => YamlText.Parse("x.yaml", $"a: {plain}\n").Root!["a"];
}
