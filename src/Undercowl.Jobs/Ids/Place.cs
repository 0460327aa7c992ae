using System.Globalization;

namespace Undercowl.Jobs;

/// <summary>
/// Where on an engine something is: <c>engine</c>, <c>cyl:2</c>, <c>pair:1+4</c>, <c>bank:A</c>, <c>group:1+2+3</c>,
/// <c>side:boat</c> or <c>side:engine</c>. Not a part (see <see cref="PartId"/>) and not checked against a layout: that
/// cylinder 9 exists is for others to say. Cylinders run from 1 to 99. The default value means the engine as a whole.
/// </summary>
public readonly record struct Place
{
    private const string Grammar = "Write engine, cyl:2, pair:1+4, group:1+2+3, bank:A, side:boat or side:engine; cylinders ascending, from 1 to 99.";

    private readonly string? text;

    private Place(string text) => this.text = text;

    /// <summary>The engine as a whole.</summary>
    public static Place Engine => default;

    /// <summary>The place as written.</summary>
    public string Text => text ?? "engine";

    /// <summary>The cylinders that the text itself names, ascending; empty for engine, bank and side.</summary>
    public IReadOnlyList<int> Cylinders => Text.Split(':') is ["cyl" or "pair" or "group", var numbers]
        ? Array.ConvertAll(numbers.Split('+'), number => int.Parse(number, CultureInfo.InvariantCulture))
        : [];

    /// <summary>Parses or throws <see cref="JobException"/>, saying which places there are.</summary>
    public static Place Parse(string text) => TryParse(text, out var place)
        ? place
        : throw new JobException($"\"{text}\" is not a place on an engine.", Grammar);

    public static bool TryParse(string? text, out Place place)
    {
        place = default;
        if (text is "engine")
            return true;
        var colon = text?.IndexOf(':') ?? -1;
        if (colon < 0)
            return false;
        var rest = text.AsSpan(colon + 1);
        var good = text![..colon] switch
        {
            "cyl" => Ascending(rest) == 1,
            "pair" => Ascending(rest) == 2,
            "group" => Ascending(rest) >= 2,
            "bank" => rest is [>= 'A' and <= 'Z'],
            "side" => rest is "boat" or "engine",
            _ => false,
        };
        if (good)
            place = new Place(text);
        return good;
    }

    public override string ToString() => Text;

    // The number of cylinders in "1+4", or 0 when they are malformed, repeated or out of order.
    private static int Ascending(ReadOnlySpan<char> text)
    {
        var count = 0;
        var last = 0;
        foreach (var range in text.Split('+'))
        {
            var digits = text[range];
            if (digits is not ([>= '1' and <= '9'] or [>= '1' and <= '9', >= '0' and <= '9']))
                return 0;
            var number = int.Parse(digits, NumberStyles.None, CultureInfo.InvariantCulture);
            if (number <= last)
                return 0;
            last = number;
            count++;
        }

        return count;
    }
}
