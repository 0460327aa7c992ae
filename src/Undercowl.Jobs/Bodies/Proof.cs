using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>The claim that the engine is put right, with the findings that it rests on. Whether they suffice is judged elsewhere.</summary>
/// <param name="Findings">The ids of the findings, at least one.</param>
/// <param name="Statement">What was shown.</param>
public sealed record Proof(IReadOnlyList<EntryId> Findings, string Statement) : EntryBody
{
    internal const string KindName = "proof";

    public override string Kind => KindName;

    internal static Proof Read(Members m)
    {
        var proof = new Proof(
            m.List("findings", "the ids of the findings it rests on", EntryId.Parse),
            m.Text("statement", "what was shown"));
        return proof.Findings.Count > 0
            ? proof
            : throw new JobException("The proof rests on no finding.", "Name the findings that show the engine to be right.");
    }

    internal override void Write(Utf8JsonWriter json)
    {
        json.List("findings", Findings);
        json.Text("statement", Statement);
    }
}
