using System.Globalization;

namespace Undercowl.Knowledge;

/// <summary>
/// The places of a layout: <c>engine</c>, <c>cyl:2</c>, <c>pair:1+4</c>, <c>group:1+2+3</c> (cylinders ascending),
/// <c>bank:A</c> of its banks, <c>side:boat</c>, <c>side:engine</c>; in a layout's parts also <c>each cyl</c>.
/// </summary>
public static class LayoutPlaces
{
    public const string EachCylinder = "each cyl";

    public const int MostCylinders = 12;

    /// <summary>Every part, in the order of the layout's entries. Places that are none are left out; the checking names them.</summary>
    public static IReadOnlyList<PartPlace> Of(EngineLayout layout)
    {
        ArgumentNullException.ThrowIfNull(layout);
        return [.. layout.Parts.SelectMany(entry => entry.At.Values, (entry, at) => (entry.Part, At: at)).SelectMany(p => Expand(layout, p.At), Placed).OfType<PartPlace>()];

        PartPlace? Placed((string Part, string At) entry, string place) =>
            Wrong(layout, place, out var cylinders) is null ? new PartPlace(entry.Part, place, cylinders) : null;
    }

    /// <summary>The places that a word of a layout entry stands for: itself, or every cylinder.</summary>
    public static IEnumerable<string> Expand(EngineLayout layout, string at)
    {
        ArgumentNullException.ThrowIfNull(layout);
        return at == EachCylinder ? Enumerable.Range(1, layout.Cylinders).Select(c => FormattableString.Invariant($"cyl:{c}")) : [at];
    }

    /// <summary>The cylinders that a place serves, ascending; false when it is no place of this layout.</summary>
    public static bool TryCylinders(EngineLayout layout, string place, out IReadOnlyList<int> cylinders)
    {
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(place);
        return Wrong(layout, place, out cylinders) is null;
    }

    /// <summary>What is wrong with a place, and how to mend it; null for a place of this layout.</summary>
    internal static (string Message, string Mend)? Wrong(EngineLayout layout, string place, out IReadOnlyList<int> cylinders)
    {
        cylinders = [];
        var colon = place.IndexOf(':', StringComparison.Ordinal);
        var (word, rest) = colon < 0 ? (place, "") : (place[..colon], place[(colon + 1)..]);
        switch (word)
        {
            case "engine" when colon < 0:
            case "side" when rest is "boat" or "engine":
                cylinders = [.. Enumerable.Range(1, layout.Cylinders)];
                return null;
            case "side":
                return ($"there is no side {rest}", "write side:boat or side:engine");
            case "bank":
                if (!layout.Banks.TryGetValue(rest, out var bank) || bank.Count == 0)
                {
                    return ($"the layout has no bank {rest}", layout.Banks.Count == 0 ? "list it under banks, with its cylinders" : $"use one of: {string.Join(", ", layout.Banks.Keys)}");
                }

                cylinders = [.. bank.Order()];
                return null;
            case "cyl" or "pair" or "group":
                return Numbered(layout, word, rest, out cylinders);
            default:
                return ($"{place} is not a place", "write engine, each cyl, cyl:2, pair:1+4, group:1+2+3, bank:A, side:boat or side:engine");
        }
    }

    private static (string Message, string Mend)? Numbered(EngineLayout layout, string word, string text, out IReadOnlyList<int> cylinders)
    {
        var numbers = new List<int>();
        cylinders = numbers;
        foreach (var part in text.Split('+'))
        {
            if (part.StartsWith('0') || !int.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out var number))
            {
                return ($"{word}:{text} does not name cylinders", $"write {Example(word)}");
            }

            if (number < 1 || number > layout.Cylinders)
            {
                return (FormattableString.Invariant($"the layout has no cylinder {number}"), FormattableString.Invariant($"cylinders run from 1 to {layout.Cylinders}"));
            }

            numbers.Add(number);
        }

        if (numbers.Zip(numbers.Skip(1)).Any(p => p.First >= p.Second))
        {
            return ($"the cylinders of {word}:{text} are not in ascending order", $"write {word}:{string.Join('+', numbers.Distinct().Order())}");
        }

        var fits = word switch
        {
            "cyl" => numbers.Count == 1,
            "pair" => numbers.Count == 2,
            _ => numbers.Count >= 2,
        };
        return fits ? null : (FormattableString.Invariant($"a {word} has not {numbers.Count} cylinders"), $"write {Example(word)}");
    }

    private static string Example(string word) => word switch
    {
        "cyl" => "cyl and one cylinder, such as cyl:2",
        "pair" => "pair and two cylinders, such as pair:1+4",
        _ => "group and its cylinders, such as group:1+2+3",
    };
}
