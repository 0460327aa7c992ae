using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>Which tools are at hand and which are not. Tools named in neither list keep what an earlier entry said.</summary>
/// <param name="Have">At hand.</param>
/// <param name="Lack">Not to be had here.</param>
public sealed record Tools(IReadOnlyList<string> Have, IReadOnlyList<string> Lack) : EntryBody
{
    internal const string KindName = "tools";

    public override string Kind => KindName;

    internal static Tools Read(Members m)
    {
        var tools = new Tools(m.List("have", "tools at hand", Members.AsName), m.List("lack", "tools not at hand", Members.AsName));
        return tools.Have.Intersect(tools.Lack).FirstOrDefault() is { } both
            ? throw new JobException($"The tool \"{both}\" is both at hand and lacking.", "Name it in one of the two lists.")
            : tools;
    }

    internal override void Write(Utf8JsonWriter json)
    {
        json.List("have", Have);
        json.List("lack", Lack);
    }
}
