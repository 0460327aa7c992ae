using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>The customer agreed to something before money was spent on it.</summary>
/// <param name="What">What was agreed to, in words: the part, the price, the chance that it cures.</param>
/// <param name="By">Who agreed: a role, for example owner; not a name.</param>
/// <param name="Limit">Up to what sum; null when no sum was named.</param>
public sealed record Approved(string What, string By, Money? Limit = null) : EntryBody
{
    internal const string KindName = "approved";

    public override string Kind => KindName;

    internal static Approved Read(Members m) => new(
        m.Text("what", "what was agreed to"),
        m.Text("by", "who agreed"),
        m.OptionalMoney("limit", "up to what sum"));

    internal override void Write(Utf8JsonWriter json)
    {
        json.Text("what", What);
        json.Text("by", By);
        json.Money("limit", Limit);
    }
}
