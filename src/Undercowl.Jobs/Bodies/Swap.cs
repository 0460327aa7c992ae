using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>Two like parts, or the plugs of two outputs, traded places. Done twice it is undone.</summary>
/// <param name="Part">The sort of part.</param>
/// <param name="A">One place.</param>
/// <param name="B">The other; never the same.</param>
/// <param name="Output">Which output was exchanged, when not the part as a whole.</param>
public sealed record Swap(string Part, Place A, Place B, string? Output = null) : EntryBody
{
    internal const string KindName = "swap";

    public override string Kind => KindName;

    internal static Swap Read(Members m)
    {
        var swap = new Swap(
            m.Name("part", "the sort of part"),
            m.Place("a", "one place"),
            m.Place("b", "the other place"),
            m.OptionalName("output", "which output"));
        return swap.A == swap.B
            ? throw new JobException($"The swap has {swap.A} on both sides.", "Name the two places that were exchanged.")
            : swap;
    }

    internal override void Write(Utf8JsonWriter json)
    {
        json.Text("part", Part);
        json.Text("a", A.Text);
        json.Text("b", B.Text);
        json.Text("output", Output);
    }
}
