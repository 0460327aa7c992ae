using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>One answer of the intake interview. A question with several answers gets several entries.</summary>
/// <param name="Question">The question by name.</param>
/// <param name="Answer">The answer by name.</param>
/// <param name="Hand">Who said it; null when the technician knows it himself.</param>
/// <param name="Hearsay">True when it is told by somebody not trained to tell.</param>
/// <param name="Words">As it was put.</param>
public sealed record Intake(string Question, string Answer, string? Hand = null, bool Hearsay = false, string? Words = null) : EntryBody
{
    internal const string KindName = "intake";

    public override string Kind => KindName;

    internal static Intake Read(Members m) => new(
        m.Name("question", "the question by name"),
        m.Name("answer", "the answer by name"),
        m.OptionalText("hand", "who said it"),
        m.Flag("hearsay", "told by somebody untrained"),
        m.OptionalText("words", "as it was put"));

    internal override void Write(Utf8JsonWriter json)
    {
        json.Text("question", Question);
        json.Text("answer", Answer);
        json.Text("hand", Hand);
        json.Flag("hearsay", Hearsay);
        json.Text("words", Words);
    }
}
