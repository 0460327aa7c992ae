using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>
/// The engine turned out to be made otherwise than the opening said. The last one holds for the whole job: the
/// engine was never the other one.
/// </summary>
/// <param name="Composed">The composed layout, as in <see cref="Opened"/>.</param>
/// <param name="Why">What showed it.</param>
public sealed record Layout(EmbeddedJson Composed, string Why) : EntryBody
{
    internal const string KindName = "layout";

    public override string Kind => KindName;

    internal static Layout Read(Members m) => new(
        EmbeddedJson.Of(m.Required("layout", JsonValueKind.Object, "the composed engine layout")),
        m.Text("why", "what showed that the layout was another"));

    internal override void Write(Utf8JsonWriter json)
    {
        json.Embedded("layout", Composed);
        json.Text("why", Why);
    }
}
