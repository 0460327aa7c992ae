using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>
/// What the engine's plate and hour meter say, so that parts can be ordered and the next visit can find this one.
/// About the engine, not about its owner: a log is never rewritten, so no person belongs in it.
/// </summary>
/// <param name="Facts">For example model, serial, year, hours. The latest entry wins, fact by fact.</param>
public sealed record Plate(IReadOnlyDictionary<string, string> Facts) : EntryBody
{
    internal const string KindName = "plate";

    public override string Kind => KindName;

    internal static Plate Read(Members m) => new(m.Map("facts", "what the plate says, by name"));

    internal override void Write(Utf8JsonWriter json) => json.Map("facts", Facts);
}
