namespace Undercowl.Jobs;

/// <summary>
/// The id of a part or of anything that has a place: <c>kind[@place][/output]</c>, as in <c>some-part@cyl:2</c> or
/// <c>other-part@engine/out-1</c>. Not checked against a catalogue: that such a kind exists is for others to say.
/// The default value is no part and has the text "".
/// </summary>
public readonly record struct PartId
{
    private const string Grammar = "Write kind[@place][/output] in lower case, for example widget@cyl:2 or widget@engine/out-1.";

    private PartId(string kind, Place? place, string? output) => (Kind, Place, Output) = (kind, place, output);

    /// <summary>What sort of part, for example <c>some-part</c>: a letter, then letters, digits and hyphens.</summary>
    public string Kind => field ?? "";

    /// <summary>Where it sits; null when the id names the sort of part and not one of them.</summary>
    public Place? Place { get; }

    /// <summary>Which output of it; null for the part as a whole.</summary>
    public string? Output { get; }

    public static PartId Of(string kind, Place? place = null, string? output = null) =>
        Parse($"{kind}{(place is { } at ? "@" + at.Text : "")}{(output is null ? "" : "/" + output)}");

    /// <summary>Parses or throws <see cref="JobException"/>, showing the grammar and the half that is wrong.</summary>
    public static PartId Parse(string text)
    {
        if (TryParse(text, out var part))
            return part;
        var at = text.IndexOf('@');
        var place = at < 0 ? null : text[(at + 1)..].Split('/')[0];
        throw place is not null && !Jobs.Place.TryParse(place, out _)
            ? new JobException($"\"{text}\" is not a part: \"{place}\" is not a place on an engine.", Grammar)
            : new JobException($"\"{text}\" is not a part.", Grammar);
    }

    public static bool TryParse(string? text, out PartId part)
    {
        part = default;
        if (text is null)
            return false;
        string? output = null;
        var rest = text;
        if (rest.IndexOf('/') is var slash and >= 0)
        {
            output = rest[(slash + 1)..];
            rest = rest[..slash];
        }

        Place? place = null;
        if (rest.IndexOf('@') is var at and >= 0)
        {
            if (!Jobs.Place.TryParse(rest[(at + 1)..], out var found))
                return false;
            place = found;
            rest = rest[..at];
        }

        if (!IsKind(rest) || (output is not null && !IsOutput(output)))
            return false;
        part = new PartId(rest, place, output);
        return true;
    }

    public override string ToString() =>
        $"{Kind}{(Place is { } at ? "@" + at.Text : "")}{(Output is null ? "" : "/" + Output)}";

    internal static bool IsKind(ReadOnlySpan<char> text) => text is [>= 'a' and <= 'z', ..] && IsOutput(text);

    internal static bool IsOutput(ReadOnlySpan<char> text)
    {
        foreach (var c in text)
        {
            if (!char.IsAsciiLetterLower(c) && !char.IsAsciiDigit(c) && c != '-')
                return false;
        }

        return text.Length > 0;
    }
}
