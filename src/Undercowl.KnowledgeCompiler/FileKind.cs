using System.Text.Json.Serialization.Metadata;
using Undercowl.Knowledge;
using Undercowl.KnowledgeCompiler.Shapes;

namespace Undercowl.KnowledgeCompiler;

/// <summary>
/// A sort of knowledge file, one for each member of <see cref="KnowledgeBase"/>: a folder of that name with one record to a
/// file, or one file of that name with them all.
/// </summary>
/// <param name="Name">Name of the member, the folder, or the file without <c>.yaml</c>.</param>
/// <param name="Record">Type of one record; for the map of aliases, of the whole.</param>
/// <param name="File">Type of all that one file holds: a record, or the list or map of them.</param>
/// <param name="Sort">How the records are laid out in files.</param>
internal sealed record FileKind(string Name, Type Record, Type File, FileSort Sort)
{
    private static readonly string[] SingleFiles = ["sources", "hands", "costs", "results", "specs"];

    public static IReadOnlyList<FileKind> All { get; } = [.. ShapeCheck.Info(typeof(KnowledgeBase)).Properties.Select(Of)];

    public string SchemaName => Sort == FileSort.Folder ? Singular(Name) : Name;

    private static FileKind Of(JsonPropertyInfo member)
    {
        var info = ShapeCheck.Info(member.PropertyType);
        return info.Kind == JsonTypeInfoKind.Dictionary ? new FileKind(member.Name, member.PropertyType, member.PropertyType, FileSort.Map)
            : SingleFiles.Contains(member.Name) ? new FileKind(member.Name, info.ElementType!, member.PropertyType, FileSort.List)
            : new FileKind(member.Name, info.ElementType!, info.ElementType!, FileSort.Folder);
    }

    private static string Singular(string name) =>
        name.EndsWith("ies", StringComparison.Ordinal) ? name[..^3] + "y" : name.EndsWith('s') ? name[..^1] : name;
}

internal enum FileSort
{
    Folder,
    List,
    Map,
}
