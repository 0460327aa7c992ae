using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>The job begins: which engine layout, which knowledge, what is complained of.</summary>
/// <param name="Layout">The composed layout as it stood when the job was opened, embedded so that the job can be read alone.</param>
/// <param name="Knowledge">The <c>sha256:</c> of the knowledge in use then.</param>
/// <param name="Complaint">What the customer came with.</param>
/// <param name="Previous">The opening of this engine's visit before; null when none is known.</param>
public sealed record Opened(EmbeddedJson Layout, string Knowledge, Complaint Complaint, EntryId? Previous = null) : EntryBody
{
    internal const string KindName = "opened";

    public override string Kind => KindName;

    internal static Opened Read(Members m)
    {
        var layout = EmbeddedJson.Of(m.Required("layout", JsonValueKind.Object, "the composed engine layout"));
        var complaint = m.Inner("complaint", "complaint", "what is complained of");
        var result = new Opened(
            layout,
            m.Hash("knowledge", "the hash of the knowledge in use"),
            Complaint.Read(complaint),
            m.OptionalEntry("previous", "the id of the opening of the visit before"));
        complaint.Finish();
        return result;
    }

    internal override void Write(Utf8JsonWriter json)
    {
        json.Embedded("layout", Layout);
        json.Text("knowledge", Knowledge);
        json.WriteStartObject("complaint");
        Complaint.Write(json);
        json.WriteEndObject();
        json.Text("previous", Previous?.ToString());
    }
}
