using System.Text;

namespace Undercowl.Jobs.Tests.Canonical;

public sealed class CanonicalJsonTests
{
    [Fact]
    public void Members_sort_as_in_the_example_of_the_standard()
    {
        // certified: RFC 8785, section 3.2.3, sample with its stated order of values. A smiley sorts by its first
        // surrogate (D83D), hence before FB33: this is not the order of code points.
        const string Input = """
            {
              "\u20ac": "Euro Sign",
              "\r": "Carriage Return",
              "\ufb33": "Hebrew Letter Dalet With Dagesh",
              "1": "One",
              "\ud83d\ude00": "Emoji: Grinning Face",
              "\u0080": "Control",
              "\u00f6": "Latin Small Letter O With Diaeresis"
            }
            """;
        const string Expected = "{\"\\r\":\"Carriage Return\",\"1\":\"One\",\"\u0080\":\"Control\",\"\u00f6\":\"Latin Small Letter O With Diaeresis\","
            + "\"\u20ac\":\"Euro Sign\",\"\ud83d\ude00\":\"Emoji: Grinning Face\",\"\ufb33\":\"Hebrew Letter Dalet With Dagesh\"}";
        Assert.Equal(Expected, Canonical(Input));
    }

    [Fact]
    public void Texts_and_literals_are_written_as_the_bytes_of_the_standard()
    {
        // certified: RFC 8785, section 3.2.2 (input) and 3.2.4 (bytes), without the member "numbers": fractions are refused here.
        const string Input = """{"string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/", "literals": [null, true, false]}""";
        var expected = Convert.FromHexString(
            "7b226c69746572616c73223a5b6e756c6c2c747275652c66616c73655d2c"
            + "22737472696e67223a22e282ac245c75303030665c6e4127425c225c5c5c5c5c222f227d");
        Assert.Equal(expected, CanonicalJson.Of(Encoding.UTF8.GetBytes(Input)));
    }

    [Theory]
    [InlineData("\\u0000", "\\u0000")]
    [InlineData("\\u0008", "\\b")]
    [InlineData("\\u0009", "\\t")]
    [InlineData("\\u000a", "\\n")]
    [InlineData("\\u000B", "\\u000b")]
    [InlineData("\\u000c", "\\f")]
    [InlineData("\\u000d", "\\r")]
    [InlineData("\\u001F", "\\u001f")]
    [InlineData("\\u0022", "\\\"")]
    [InlineData("\\u005C", "\\\\")]
    [InlineData("\\/", "/")]
    [InlineData("\\u007f", "\u007f")]
    [InlineData("\\u2028", "\u2028")]
    public void Each_escape_has_one_form(string given, string expected)
    {
        // certified: RFC 8785, section 3.2.2.2, the rules for strings.
        Assert.Equal($"\"{expected}\"", Canonical($"\"{given}\""));
    }

    [Theory]
    [InlineData("0")]
    [InlineData("-1")]
    [InlineData("9007199254740991")]
    [InlineData("-9007199254740991")]
    public void Whole_numbers_within_the_safe_range_are_kept(string number) => Assert.Equal($"[{number}]", Canonical($"[{number}]"));

    [Theory]
    [InlineData("0.9")]
    [InlineData("1.0")]
    [InlineData("1e3")]
    [InlineData("1E3")]
    [InlineData("-0")]
    [InlineData("9007199254740992")]
    [InlineData("-9007199254740992")]
    [InlineData("99999999999999999999")]
    public void Other_numbers_are_refused_with_the_way_to_write_them(string number)
    {
        var error = Assert.Throws<JobException>(() => Canonical($$"""{"gap":{{number}}}"""));
        Assert.Contains(number, error.Problem.What, StringComparison.Ordinal);
        Assert.Contains("\"unit\":\"mm\"", error.Problem.Mend, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"\\ud800\"")]
    [InlineData("{\"\\udc00\":1}")]
    [InlineData("{\"a\":1,\"a\":1}")]
    [InlineData("{\"a\":1,\"\\u0061\":2}")]
    [InlineData("[1,]")]
    [InlineData("[1]//")]
    [InlineData("")]
    public void What_is_not_strict_json_is_refused(string text) => Assert.Throws<JobException>(() => Canonical(text));

    [Fact]
    public void Nesting_has_a_limit_and_reaches_it()
    {
        var deepest = new string('[', CanonicalJson.MaxDepth) + new string(']', CanonicalJson.MaxDepth);
        Assert.Equal(deepest, Canonical(deepest));
        Assert.Throws<JobException>(() => Canonical("[" + deepest + "]"));
    }

    private static string Canonical(string json) => Encoding.UTF8.GetString(CanonicalJson.Of(Encoding.UTF8.GetBytes(json)));
}
