using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>
/// Reads one JSON object member by member, remembers which members nobody asked for, and says of every bad one
/// what it should be. Members written as null are bad: what is absent is left out.
/// </summary>
internal sealed class Members
{
    private readonly JsonElement owner;
    private readonly string name;
    private readonly string path;
    private readonly List<UnknownMember> unknown;
    private readonly HashSet<string> asked = new(StringComparer.Ordinal);

    public Members(JsonElement owner, string name, string path, List<UnknownMember> unknown)
    {
        if (owner.ValueKind != JsonValueKind.Object)
            throw new JobException($"The {name} is {Spoken(owner.ValueKind)}, not an object.", $"Write the {name} in braces.");
        (this.owner, this.name, this.path, this.unknown) = (owner, name, path, unknown);
    }

    /// <summary>To be called once all known members were read: what is left goes on the list of unknown ones.</summary>
    public void Finish()
    {
        foreach (var member in owner.EnumerateObject())
        {
            if (!asked.Contains(member.Name))
                unknown.Add(new UnknownMember(path.Length == 0 ? member.Name : path + "." + member.Name, member.Value.GetRawText()));
        }
    }

    public bool Has(string member) => owner.TryGetProperty(member, out _);

    public bool IsEmpty => !owner.EnumerateObject().Any();

    public string Raw => owner.GetRawText();

    public JsonElement? Optional(string member, JsonValueKind kind, string what)
    {
        asked.Add(member);
        if (!owner.TryGetProperty(member, out var value))
            return null;
        return value.ValueKind == kind
            ? value
            : throw Bad(member, $"is {Spoken(value.ValueKind)}", $"Write it as {Spoken(kind)}: {what}.");
    }

    public JsonElement Required(string member, JsonValueKind kind, string what) => Optional(member, kind, what)
        ?? throw new JobException($"The {name} has no \"{member}\".", $"Add \"{member}\": {what}.");

    public string Text(string member, string what) => NotEmpty(member, Required(member, JsonValueKind.String, what).GetString()!, what);

    public string? OptionalText(string member, string what) =>
        Optional(member, JsonValueKind.String, what) is { } value ? NotEmpty(member, value.GetString()!, what) : null;

    /// <summary>A text in the grammar of ids without place: lower case letters, digits, hyphens.</summary>
    public string Name(string member, string what) => Named(member, Text(member, what), what);

    public string? OptionalName(string member, string what) =>
        OptionalText(member, what) is { } text ? Named(member, text, what) : null;

    public PartId Part(string member, string what) => Parse(member, Text(member, what), PartId.Parse);

    public PartId? OptionalPart(string member, string what) =>
        OptionalText(member, what) is { } text ? Parse(member, text, PartId.Parse) : null;

    public Place Place(string member, string what) => Parse(member, Text(member, what), Jobs.Place.Parse);

    public Place? OptionalPlace(string member, string what) =>
        OptionalText(member, what) is { } text ? Parse(member, text, Jobs.Place.Parse) : null;

    public EntryId Entry(string member, string what) => Parse(member, Text(member, what), EntryId.Parse);

    public EntryId? OptionalEntry(string member, string what) =>
        OptionalText(member, what) is { } text ? Parse(member, text, EntryId.Parse) : null;

    public DecimalText Decimal(string member, string what) => Parse(member, Text(member, what), DecimalText.Parse);

    public string Hash(string member, string what)
    {
        var text = Text(member, what);
        return Sha256Text.Is(text) ? text : throw Bad(member, $"is \"{text}\"", "Write sha256: and 64 lower-case hexadecimal digits.");
    }

    public long Whole(string member, long least, string what) =>
        OptionalWhole(member, least, what) ?? throw new JobException($"The {name} has no \"{member}\".", $"Add \"{member}\": {what}.");

    public long? OptionalWhole(string member, long least, string what)
    {
        if (Optional(member, JsonValueKind.Number, what) is not { } value)
            return null;
        return value.TryGetInt64(out var number) && number >= least
            ? number
            : throw Bad(member, $"is {value.GetRawText()}", $"Write a whole number of {least} or more: {what}.");
    }

    /// <summary>A member that is either true or left out; false is refused so that there is one way to say it.</summary>
    public bool Flag(string member, string what)
    {
        asked.Add(member);
        if (!owner.TryGetProperty(member, out var value))
            return false;
        return value.ValueKind == JsonValueKind.True
            ? true
            : throw Bad(member, $"is {Spoken(value.ValueKind)}", $"Write true or leave it out: {what}.");
    }

    public T OneOf<T>(string member, string what)
        where T : struct, Enum => Chosen<T>(member, Text(member, what));

    public T? OptionalOneOf<T>(string member, string what)
        where T : struct, Enum => OptionalText(member, what) is { } text ? Chosen<T>(member, text) : null;

    public Members Inner(string member, string innerName, string what) =>
        new(Required(member, JsonValueKind.Object, what), innerName, path.Length == 0 ? member : path + "." + member, unknown);

    public Members? OptionalInner(string member, string innerName, string what) =>
        Has(member) ? Inner(member, innerName, what) : null;

    public Measured Measured(string member, string what) => ReadMeasured(Inner(member, member, what));

    public Measured? OptionalMeasured(string member, string what) => Has(member) ? Measured(member, what) : null;

    public Money? OptionalMoney(string member, string what)
    {
        if (OptionalInner(member, member, what) is not { } inner)
            return null;
        var money = Parse(member, (inner.Decimal("value", "the amount as decimal text"), inner.Text("currency", "a three-letter code")),
            pair => Money.Of(pair.Item1.Text, pair.Item2));
        inner.Finish();
        return money;
    }

    public IReadOnlyDictionary<string, string> Map(string member, string what) => OptionalMap(member, what)
        ?? throw new JobException($"The {name} has no \"{member}\".", $"Add \"{member}\": {what}; {{}} when there is nothing to say.");

    public IReadOnlyDictionary<string, string>? OptionalMap(string member, string what)
    {
        if (Optional(member, JsonValueKind.Object, what) is not { } value)
            return null;
        var map = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var pair in value.EnumerateObject())
        {
            if (!PartId.TryParse(pair.Name, out _))
                throw Bad(member, $"has the key \"{pair.Name}\"", "Write keys in lower case as kind[@place][/output], for example cover or cover@cyl:2.");
            map[pair.Name] = pair.Value.ValueKind == JsonValueKind.String && pair.Value.GetString() is { Length: > 0 } text
                ? text
                : throw Bad(member, $"has no text for \"{pair.Name}\"", "Write every value as text that is not empty.");
        }

        return map;
    }

    public IReadOnlyDictionary<string, Measured>? OptionalMeasurements(string member, string what)
    {
        if (Optional(member, JsonValueKind.Object, what) is not { } value)
            return null;
        var inner = Inner(member, member, what);
        var map = new SortedDictionary<string, Measured>(StringComparer.Ordinal);
        foreach (var pair in value.EnumerateObject())
        {
            if (!PartId.TryParse(pair.Name, out _))
                throw Bad(member, $"has the key \"{pair.Name}\"", "Write keys in lower case as kind[@place][/output], for example gap or torque.");
            map[pair.Name] = inner.Measured(pair.Name, "a measured number");
        }

        return map;
    }

    public IReadOnlyList<T> List<T>(string member, string what, Func<string, T> parse) => OptionalList(member, what, parse)
        ?? throw new JobException($"The {name} has no \"{member}\".", $"Add \"{member}\": {what}; [] when there is none.");

    public IReadOnlyList<T>? OptionalList<T>(string member, string what, Func<string, T> parse)
    {
        if (Optional(member, JsonValueKind.Array, what) is not { } value)
            return null;
        var list = new List<T>();
        foreach (var item in value.EnumerateArray())
        {
            list.Add(item.ValueKind == JsonValueKind.String && item.GetString() is { Length: > 0 } text
                ? Parse(member, text, parse)
                : throw Bad(member, "has an item that is not text", $"Write every item as text that is not empty: {what}."));
        }

        return list;
    }

    public IReadOnlyList<T>? OptionalObjects<T>(string member, string what, string itemName, Func<Members, T> read)
    {
        if (Optional(member, JsonValueKind.Array, what) is not { } value)
            return null;
        var list = new List<T>();
        foreach (var item in value.EnumerateArray())
        {
            var inner = new Members(item, itemName, $"{path}.{member}[{list.Count}]", unknown);
            list.Add(read(inner));
            inner.Finish();
        }

        return list;
    }

    public JobException Bad(string member, string how, string mend) => new($"In the {name}, \"{member}\" {how}.", mend);

    internal static string AsName(string text) => PartId.IsOutput(text)
        ? text
        : throw new JobException($"\"{text}\" is not an id.", "Write ids with lower-case letters, digits and hyphens.");

    private static Measured ReadMeasured(Members inner)
    {
        var value = inner.Decimal("value", "the digits as read, as text");
        var unit = inner.Text("unit", "the unit, for example mm");
        inner.Finish();
        return Jobs.Measured.IsUnit(unit)
            ? new Measured(value, unit)
            : throw inner.Bad("unit", $"is \"{unit}\"", "Write a unit without blanks, at most 16 characters, for example mm, kPa or °C.");
    }

    private string Named(string member, string text, string what) => PartId.IsOutput(text)
        ? text
        : throw Bad(member, $"is \"{text}\"", $"Write lower-case letters, digits and hyphens: {what}.");

    private string NotEmpty(string member, string text, string what) => text.Length > 0
        ? text
        : throw Bad(member, "is empty", $"Write {what}, or leave the member out where it may be absent.");

    private T Chosen<T>(string member, string text)
        where T : struct, Enum => Words.TryRead<T>(text, out var value)
        ? value
        : throw Bad(member, $"is \"{text}\"", $"Write one of {string.Join(", ", Words.All<T>())}.");

    private TResult Parse<TText, TResult>(string member, TText text, Func<TText, TResult> parse)
    {
        try
        {
            return parse(text);
        }
        catch (JobException error)
        {
            throw new JobException($"In the {name}, at \"{member}\": {error.Problem.What}", error.Problem.Mend, error);
        }
    }

    private static string Spoken(JsonValueKind kind) => kind switch
    {
        JsonValueKind.Object => "an object",
        JsonValueKind.Array => "a list",
        JsonValueKind.String => "text",
        JsonValueKind.Number => "a number",
        JsonValueKind.Null => "null",
        _ => "true or false",
    };
}
