using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>How warm the engine is.</summary>
public enum Heat
{
    Cold,
    Warm,
    Hot,
}

/// <summary>
/// A new stretch of time begins in which passing states (wet plugs, battery charge, a fault that comes and goes) may be
/// others than before. Findings name it by this entry's id.
/// </summary>
/// <param name="Heat">How warm the engine is from now on.</param>
/// <param name="Why">What ended the stretch before.</param>
/// <param name="Handled">The parts that were handled; null when none was.</param>
public sealed record Occasion(Heat Heat, string Why, IReadOnlyList<PartId>? Handled = null) : EntryBody
{
    internal const string KindName = "occasion";

    public override string Kind => KindName;

    internal static Occasion Read(Members m) => new(
        m.OneOf<Heat>("heat", "cold, warm or hot"),
        m.Text("why", "what ended the stretch before"),
        m.OptionalList("handled", "the parts that were handled", PartId.Parse));

    internal override void Write(Utf8JsonWriter json)
    {
        json.Word<Heat>("heat", Heat);
        json.Text("why", Why);
        json.List("handled", Handled);
    }
}
