using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace Undercowl.KnowledgeCompiler.Yaml;

/// <summary>
/// What a plain scalar stands for by the core schema of YAML 1.2.2, 10.3.2: null, true or false, a number, else a text.
/// <c>yes</c>, <c>no</c>, <c>on</c> and <c>off</c> are texts.
/// </summary>
internal static partial class CoreSchema
{
    public static JsonNode? Value(string plain)
    {
        switch (plain)
        {
            case "" or "~" or "null" or "Null" or "NULL":
                return null;
            case "true" or "True" or "TRUE":
                return JsonValue.Create(true);
            case "false" or "False" or "FALSE":
                return JsonValue.Create(false);
            case ".nan" or ".NaN" or ".NAN":
                return JsonValue.Create(double.NaN);
        }

        if (Infinity().IsMatch(plain))
        {
            return JsonValue.Create(plain[0] == '-' ? double.NegativeInfinity : double.PositiveInfinity);
        }

        if (Whole().IsMatch(plain) && long.TryParse(plain, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var whole))
        {
            return JsonValue.Create(whole);
        }

        if (OtherBase().IsMatch(plain))
        {
            return JsonValue.Create(Convert.ToInt64(plain[2..], plain[1] == 'x' ? 16 : 8));
        }

        return Number().IsMatch(plain) ? JsonValue.Create(double.Parse(plain, NumberStyles.Float, CultureInfo.InvariantCulture)) : JsonValue.Create(plain);
    }

    [GeneratedRegex(@"^[-+]?[0-9]+\z")]
    private static partial Regex Whole();

    [GeneratedRegex(@"^(0o[0-7]{1,20}|0x[0-9a-fA-F]{1,15})\z")]
    private static partial Regex OtherBase();

    [GeneratedRegex(@"^[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?\z")]
    private static partial Regex Number();

    [GeneratedRegex(@"^[-+]?(\.inf|\.Inf|\.INF)\z")]
    private static partial Regex Infinity();
}
