namespace Undercowl.Diagnosis.Tests.Twins;

/// <summary>The engine between two deeds. Parts are named by the seat they came in at, <c>kind@place</c>.</summary>
/// <param name="Occupant">Seat to the part sitting there, where it is another than it came with.</param>
/// <param name="Output">Part and cylinder to the output that serves it, where outputs were exchanged.</param>
/// <param name="Version">Aspect to how its condition comes out since a deed changed it, and what that is called.</param>
/// <param name="Occasion">Part to the entry that began its occasion.</param>
internal sealed record TwinState(
    Dictionary<string, string> Occupant,
    Dictionary<(string Part, int Cylinder), int> Output,
    Dictionary<string, (string Name, Func<int> Condition)> Version,
    Dictionary<string, string> Occasion)
{
    public static TwinState AsItCameIn { get; } = new([], [], [], []);

    public TwinState Copy() => new(new(Occupant), new(Output), new(Version), new(Occasion));

    public string At(string seat) => Occupant.GetValueOrDefault(seat, seat);
}
