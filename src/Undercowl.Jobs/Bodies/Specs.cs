using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>
/// This engine's own figure for one item of one part, overriding the generic one. The latest entry wins, part and item
/// together. A floor has only <paramref name="Low"/>, a ceiling only <paramref name="High"/>.
/// </summary>
/// <param name="Part">A sort of part, or one of them.</param>
/// <param name="Item">Which figure, for example resistance or gap.</param>
/// <param name="Origin">Where it was read, for example the service manual's chapter.</param>
/// <param name="Low">Least good value; null when there is no floor.</param>
/// <param name="High">Greatest good value; null when there is no ceiling.</param>
/// <param name="Nominal">The value meant; null when not given.</param>
public sealed record Specs(PartId Part, string Item, string Origin, Measured? Low = null, Measured? High = null, Measured? Nominal = null) : EntryBody
{
    internal const string KindName = "specs";

    public override string Kind => KindName;

    internal static Specs Read(Members m) => m.Has("low") || m.Has("high") || m.Has("nominal")
        ? new(
            m.Part("part", "the part or sort of part"),
            m.Name("item", "which figure"),
            m.Text("origin", "where it was read"),
            m.OptionalMeasured("low", "the least good value"),
            m.OptionalMeasured("high", "the greatest good value"),
            m.OptionalMeasured("nominal", "the value meant"))
        : throw new JobException("The specs give no figure.", "Give low, high or nominal.");

    internal override void Write(Utf8JsonWriter json)
    {
        json.Text("part", Part.ToString());
        json.Text("item", Item);
        json.Text("origin", Origin);
        json.Measured("low", Low);
        json.Measured("high", High);
        json.Measured("nominal", Nominal);
    }
}
