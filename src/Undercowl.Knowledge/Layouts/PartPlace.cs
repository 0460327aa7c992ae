namespace Undercowl.Knowledge;

/// <summary>
/// One part of a layout: a kind at a place. Not a part of a job, which may have been swapped to another place since.
/// </summary>
/// <param name="Kind">Id of the part kind.</param>
/// <param name="Place">As in the place grammar of <see cref="LayoutPlaces"/>; never <c>each cyl</c>.</param>
/// <param name="Cylinders">The cylinders it serves, ascending, at least one.</param>
public sealed record PartPlace(string Kind, string Place, IReadOnlyList<int> Cylinders)
{
    /// <summary><c>kind@place</c>, for example <c>some-part@pair:1+4</c> or <c>other-part@engine</c>.</summary>
    public string Id { get; } = $"{Kind}@{Place}";

    /// <summary>The end or output of it that serves one cylinder: <c>kind@place/cylinder</c>.</summary>
    public string Output(int cylinder) => Cylinders.Contains(cylinder)
        ? FormattableString.Invariant($"{Id}/{cylinder}")
        : throw new ArgumentOutOfRangeException(nameof(cylinder), cylinder, $"{Id} serves cylinders {string.Join(", ", Cylinders)}; name one of them.");
}
