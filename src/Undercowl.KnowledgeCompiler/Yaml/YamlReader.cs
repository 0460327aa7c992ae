using System.Globalization;
using System.Text.Json.Nodes;
using Undercowl.Knowledge.Checking;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Undercowl.KnowledgeCompiler.Yaml;

/// <summary>
/// Reads the events of one YAML document into a tree. Works on events, not on YamlDotNet's own tree, because that one stops
/// at the first repeated key and has forgotten which anchors there were.
/// </summary>
internal sealed class YamlReader(string file)
{
    private readonly Dictionary<string, int> _lines = [];
    private readonly List<KnowledgeProblem> _problems = [];
    private int _lastLine = 1;

    public YamlText Read(string text)
    {
        _lastLine = text.TrimEnd('\n').Count(c => c == '\n') + 1;
        JsonNode? root = null;
        var (events, at, message, mend) = YamlEvents.Parse(text);
        if (events is null)
        {
            Report(at, message, mend);
            return new YamlText(file, null, _lines, _problems);
        }

        events.Consume<StreamStart>();
        if (events.TryConsume<DocumentStart>(out _))
        {
            root = Node(events, "");
            events.Consume<DocumentEnd>();
        }

        if (events.TryConsume<DocumentStart>(out var second))
        {
            Report(second.Start, "a second document begins", "keep one document to a file; take the --- out");
        }

        if (root is null && _problems.Count == 0)
        {
            Report(new Mark(0, 1, 1), "the file is empty", "write a record or remove the file");
        }

        return new YamlText(file, root, _lines, _problems);
    }

    private JsonNode? Node(YamlEvents events, string pointer)
    {
        var at = events.Current!.Start;
        _lines.TryAdd(pointer, Line(at));
        if (events.TryConsume<AnchorAlias>(out var alias))
        {
            Report(at, $"*{alias.Value} stands for something written elsewhere", "write it out here: anchors are not used in these files");
            return null;
        }

        if (events.Current is NodeEvent node)
        {
            if (!node.Anchor.IsEmpty)
            {
                Report(at, $"&{node.Anchor.Value} names an anchor", "take it out: anchors are not used in these files");
            }

            if (!node.Tag.IsEmpty && !node.Tag.IsNonSpecific)
            {
                Report(at, $"{node.Tag.Value} is a tag", "take it out: tags are not used in these files");
            }
        }

        return events.Current switch
        {
            MappingStart => Mapping(events, pointer),
            SequenceStart => Sequence(events, pointer),
            _ => Scalar(events.Consume<Scalar>()),
        };
    }

    private JsonObject Mapping(YamlEvents events, string pointer)
    {
        events.Consume<MappingStart>();
        var result = new JsonObject();
        while (!events.TryConsume<MappingEnd>(out _))
        {
            if (!events.TryConsume<Scalar>(out var key))
            {
                var at = events.Current!.Start;
                Report(at, "a name is wanted before the colon", "write a plain text there");
                events.SkipThisAndNestedEvents();
                events.SkipThisAndNestedEvents();
                continue;
            }

            if (result.ContainsKey(key.Value))
            {
                Report(key.Start, $"\"{key.Value}\" is there already, on line {_lines[Pointers.Member(pointer, key.Value)]}", "keep one of the two");
                events.SkipThisAndNestedEvents();
                continue;
            }

            var member = Pointers.Member(pointer, key.Value);
            _lines[member] = Line(key.Start);
            result[key.Value] = Node(events, member);
        }

        return result;
    }

    private JsonArray Sequence(YamlEvents events, string pointer)
    {
        events.Consume<SequenceStart>();
        var result = new JsonArray();
        while (!events.TryConsume<SequenceEnd>(out _))
        {
            result.Add(Node(events, Pointers.Entry(pointer, result.Count)));
        }

        return result;
    }

    private JsonNode? Scalar(Scalar scalar)
    {
        if (scalar.Style != ScalarStyle.Plain)
        {
            return JsonValue.Create(scalar.Value);
        }

        var value = CoreSchema.Value(scalar.Value);
        if (value is JsonValue number && number.TryGetValue(out double d) && !double.IsFinite(d))
        {
            Report(scalar.Start, $"{scalar.Value} is not a finite number", "write a number");
            return null;
        }

        return value;
    }

    private void Report(Mark at, string message, string mend) => _problems.Add(new KnowledgeProblem(file, Line(at), message, mend));

    /// <summary>What is wrong with the end of a text is told on its last line, not on one that no editor shows.</summary>
    private int Line(Mark at) => Math.Min(_lastLine, Convert.ToInt32(at.Line, CultureInfo.InvariantCulture));
}
