using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>A part that a remedy put in.</summary>
/// <param name="Part">Which part, or which sort.</param>
/// <param name="Number">The order number as printed; null when not noted.</param>
/// <param name="Price">What it cost; null when not noted, zero when it was given.</param>
/// <param name="OldKept">True when the old one was kept as evidence.</param>
public sealed record FittedPart(PartId Part, string? Number = null, Money? Price = null, bool OldKept = false)
{
    internal static FittedPart Read(Members m) => new(
        m.Part("part", "which part"),
        m.OptionalText("number", "the order number"),
        m.OptionalMoney("price", "what it cost"),
        m.Flag("oldKept", "the old one was kept"));

    internal void Write(Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.Text("part", Part.ToString());
        json.Text("number", Number);
        json.Money("price", Price);
        json.Flag("oldKept", OldKept);
        json.WriteEndObject();
    }
}
