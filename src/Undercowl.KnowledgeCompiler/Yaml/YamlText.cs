using System.Text.Json.Nodes;

namespace Undercowl.KnowledgeCompiler.Yaml;

/// <summary>One YAML file as a JSON tree that still knows its lines.</summary>
/// <param name="File">Name used in problems.</param>
/// <param name="Root">The tree; null when the file has none or cannot be read at all.</param>
/// <param name="Lines">JSON Pointer (RFC 6901) of each member, entry and the root ("") to its line, from 1.</param>
/// <param name="Problems">What YAML allows and these files do not, and what is no YAML.</param>
public sealed record YamlText(string File, JsonNode? Root, IReadOnlyDictionary<string, int> Lines, IReadOnlyList<KnowledgeProblem> Problems)
{
    public static YamlText Parse(string file, string text) => new YamlReader(file).Read(text);

    /// <summary>The line of the place, or of the nearest place around it.</summary>
    public int LineOf(string place)
    {
        ArgumentNullException.ThrowIfNull(place);
        while (true)
        {
            if (Lines.TryGetValue(place, out var line))
            {
                return line;
            }

            var slash = place.LastIndexOf('/');
            if (slash < 0)
            {
                return 1;
            }

            place = place[..slash];
        }
    }
}
