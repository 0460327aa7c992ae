using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>What came of a remedy. There is no default: an unknown result is an absent one.</summary>
public enum RemedyResult
{
    /// <summary>The complaint is gone.</summary>
    Cured,

    /// <summary>Better, not gone.</summary>
    InPart,

    /// <summary>Gone, and came back.</summary>
    ForATime,

    /// <summary>As before.</summary>
    NoChange,

    /// <summary>Something else is wrong now.</summary>
    NewFault,
}

/// <summary>What came of an earlier remedy, known only now. The latest one wins.</summary>
/// <param name="Of">The entry of the remedy.</param>
/// <param name="Came">What came of it.</param>
/// <param name="Words">Anything to add.</param>
public sealed record Result(EntryId Of, RemedyResult Came, string? Words = null) : EntryBody
{
    internal const string KindName = "result";

    public override string Kind => KindName;

    internal static Result Read(Members m) => new(
        m.Entry("remedy", "the id of the remedy's entry"),
        m.OneOf<RemedyResult>("result", "what came of it"),
        m.OptionalText("words", "anything to add"));

    internal override void Write(Utf8JsonWriter json)
    {
        json.Text("remedy", Of.ToString());
        json.Word<RemedyResult>("result", Came);
        json.Text("words", Words);
    }
}
