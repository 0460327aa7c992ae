using System.Globalization;
using System.Text.Json.Nodes;
using Undercowl.Knowledge;
using Undercowl.Knowledge.Checking;
using Undercowl.KnowledgeCompiler.Shapes;
using Undercowl.KnowledgeCompiler.Yaml;

namespace Undercowl.KnowledgeCompiler;

/// <summary>The records of all files put into one tree, with where each came from.</summary>
internal sealed class KnowledgeTree(string folder)
{
    private readonly Dictionary<string, (YamlText File, string Pointer)> _origins = [];
    private readonly List<KnowledgeProblem> _problems = [];
    private readonly HashSet<string> _unreadable = [];

    public JsonObject Root { get; } = [];

    public IReadOnlyList<KnowledgeProblem> Problems => _problems;

    /// <summary>What is there but cannot be read, as <c>checks/spark-seen</c> or, for all of a kind, <c>sources</c>.</summary>
    public IReadOnlySet<string> Unreadable => _unreadable;

    public int Count(FileKind kind) => Root[kind.Name] switch
    {
        JsonArray list => list.Count,
        JsonObject map => map.Count,
        _ => 0,
    };

    public void Add(FileKind kind, YamlText file, string id)
    {
        _problems.AddRange(file.Problems);
        if (file.Problems.Count > 0 || file.Root is null)
        {
            _unreadable.Add(kind.Sort == FileSort.Folder ? $"{kind.Name}/{id}" : kind.Name);
            return;
        }

        switch (kind.Sort)
        {
            case FileSort.Folder:
                AddRecord(kind, file, "", file.Root, $"{kind.Name}/{id}");
                if (file.Root is JsonObject record && record["id"] is JsonValue named && named.ToString() != id)
                {
                    _problems.Add(new KnowledgeProblem(
                        file.File, file.LineOf("/id"), $"the id is {named}, but the file is named {id}.yaml", $"give both the same name, such as {named}.yaml"));
                }

                break;
            case FileSort.List when file.Root is JsonArray list:
                for (var i = 0; i < list.Count; i++)
                {
                    AddRecord(kind, file, Pointers.Entry("", i), list[i], kind.Name);
                }

                break;
            case FileSort.Map when file.Root is JsonObject map:
                AddMap(kind, file, map);
                break;
            default:
                _unreadable.Add(kind.Name);
                Report(file, ShapeCheck.Faults(file.Root, kind.File, ""));
                break;
        }
    }

    public void Report(KnowledgeProblem problem) => _problems.Add(problem);

    /// <summary>The fault as a problem of the file and line that it stands in; of the folder when it stands in none.</summary>
    public KnowledgeProblem Located(KnowledgeFault fault)
    {
        var pointer = fault.Path;
        while (pointer.Length > 0)
        {
            if (_origins.TryGetValue(pointer, out var origin))
            {
                return new KnowledgeProblem(origin.File.File, origin.File.LineOf(origin.Pointer + fault.Path[pointer.Length..]), fault.Message, fault.Mend);
            }

            pointer = pointer[..pointer.LastIndexOf('/')];
        }

        return new KnowledgeProblem(folder, 1, fault.Message, fault.Mend);
    }

    /// <summary>For each number by its address the file and line that it stands on, the file as under the folder's own name.</summary>
    public IReadOnlyDictionary<string, string> Lines()
    {
        var around = Path.GetDirectoryName(Path.GetFullPath(folder)) ?? "";
        return KnowledgeNumbers.Of(Root).ToDictionary(n => n.Address, n => At(n.Path));

        string At(string pointer)
        {
            for (var known = pointer; known.Length > 0; known = known[..known.LastIndexOf('/')])
            {
                if (_origins.TryGetValue(known, out var origin))
                {
                    var file = Path.GetRelativePath(around, origin.File.File).Replace('\\', '/');
                    return string.Create(CultureInfo.InvariantCulture, $"{file}:{origin.File.LineOf(origin.Pointer + pointer[known.Length..])}");
                }
            }

            return folder;
        }
    }

    private void AddRecord(FileKind kind, YamlText file, string pointer, JsonNode? record, string name)
    {
        if (Report(file, ShapeCheck.Faults(record, kind.Record, pointer)))
        {
            _unreadable.Add(name);
            return;
        }

        var list = Root[kind.Name] as JsonArray ?? [];
        Root[kind.Name] = list;
        _origins[Pointers.Entry("/" + kind.Name, list.Count)] = (file, pointer);
        list.Add(record!.DeepClone());
    }

    private void AddMap(FileKind kind, YamlText file, JsonObject map)
    {
        if (Report(file, ShapeCheck.Faults(map, kind.Record, "")))
        {
            _unreadable.Add(kind.Name);
            return;
        }

        var all = Root[kind.Name] as JsonObject ?? [];
        Root[kind.Name] = all;
        foreach (var (key, value) in map)
        {
            if (!all.TryAdd(key, value!.DeepClone()))
            {
                _problems.Add(new KnowledgeProblem(file.File, file.LineOf(Pointers.Member("", key)), $"\"{key}\" is there already, in another folder", "keep one of the two"));
                continue;
            }

            _origins[Pointers.Member("/" + kind.Name, key)] = (file, Pointers.Member("", key));
        }
    }

    private bool Report(YamlText file, IEnumerable<KnowledgeFault> faults)
    {
        var before = _problems.Count;
        _problems.AddRange(faults.Select(f => new KnowledgeProblem(file.File, file.LineOf(f.Path), f.Message, f.Mend)));
        return _problems.Count > before;
    }
}
