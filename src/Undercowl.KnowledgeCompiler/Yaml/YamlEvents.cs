using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Undercowl.KnowledgeCompiler.Yaml;

/// <summary>All events of a text, parsed before any is looked at: what is walked afterwards is whole.</summary>
internal sealed class YamlEvents(IReadOnlyList<ParsingEvent> events) : IParser
{
    private int _at = -1;

    public ParsingEvent? Current => _at >= 0 && _at < events.Count ? events[_at] : null;

    public bool MoveNext() => ++_at < events.Count;

    /// <summary>The events, or where and why the text is no YAML.</summary>
    public static (YamlEvents? Events, Mark At, string Message, string Mend) Parse(string text)
    {
        var parsed = new List<ParsingEvent>();
        var parser = new Parser(new StringReader(text));
        try
        {
            while (parser.MoveNext())
            {
                parsed.Add(parser.Current!);
            }
        }
        catch (YamlException error)
        {
            var why = error.Message.TrimEnd('.').Replace("\n", " ", StringComparison.Ordinal);
            return (null, error.Start, $"this is no YAML: {why}", "look at the indentation, the colons and the quotes about here");
        }
        catch (Exception error) when (error is InvalidOperationException or ArgumentException)
        {
            // So, and not by its own error, the parser answers some slips: "[a" above "- b", or a tag "!![".
            return NotUnderstood(parsed);
        }

        var whole = Whole(parsed);
        return whole == parsed.Count ? (new YamlEvents(parsed), default, "", "") : NotUnderstood(parsed[..whole]);
    }

    private static (YamlEvents? Events, Mark At, string Message, string Mend) NotUnderstood(List<ParsingEvent> until) =>
        (null, until is [.., var last] ? last.End : new Mark(0, 1, 1), "this is no YAML from here on", "look for an open bracket or quote, a missing colon, or a stray ! * & about here");

    /// <summary>
    /// How many events from the first on nest as YAML does. The parser lets some slips pass with a value or an end left out,
    /// and says nothing.
    /// </summary>
    private static int Whole(List<ParsingEvent> events)
    {
        var open = new Stack<(ParsingEvent Start, int Nodes)>();
        for (var i = 0; i < events.Count; i++)
        {
            var fits = events[i] switch
            {
                StreamStart => i == 0,
                DocumentStart => open.Count == 0,
                DocumentEnd => open.TryPop(out var document) && document is (DocumentStart, 1),
                MappingEnd => open.TryPop(out var mapping) && mapping.Start is MappingStart && mapping.Nodes % 2 == 0,
                SequenceEnd => open.TryPop(out var sequence) && sequence.Start is SequenceStart,
                StreamEnd => open.Count == 0 && i == events.Count - 1,
                Scalar or AnchorAlias or MappingStart or SequenceStart => open.Count > 0,
                _ => true,
            };
            if (!fits)
            {
                return i;
            }

            if (events[i] is NodeEvent or AnchorAlias)
            {
                var (start, nodes) = open.Pop();
                open.Push((start, nodes + 1));
            }

            if (events[i] is DocumentStart or MappingStart or SequenceStart)
            {
                open.Push((events[i], 0));
            }
        }

        return events is [.., StreamEnd] ? events.Count : Math.Max(0, events.Count - 1);
    }
}
