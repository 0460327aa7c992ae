using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>What an hour of the technician's work costs. The latest entry wins.</summary>
/// <param name="PerHour">The amount and its currency; zero is a job done for nothing, not an unknown rate.</param>
public sealed record Rate(Money PerHour) : EntryBody
{
    internal const string KindName = "rate";

    public override string Kind => KindName;

    internal static Rate Read(Members m) => new(Money.Of(
        m.Decimal("perHour", "the amount for an hour as decimal text").Text,
        m.Text("currency", "a three-letter code")));

    internal override void Write(Utf8JsonWriter json)
    {
        json.Text("perHour", PerHour.Value.Text);
        json.Text("currency", PerHour.Currency);
    }
}
