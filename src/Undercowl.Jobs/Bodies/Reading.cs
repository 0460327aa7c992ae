using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>The value that a check gave. Exactly one of the records below.</summary>
public abstract record Reading
{
    private static readonly string[] Known = ["choice", "count", "number", "open", "notDone"];

    internal static Reading Read(Members m)
    {
        var given = Known.Where(m.Has).ToArray();
        if (given.Length > 1)
            throw new JobException($"The reading gives {given[0]} and {given[1]}.", "Give one of them; a second reading is a second finding.");
        switch (given.FirstOrDefault())
        {
            case "choice":
                return new ChoiceReading(m.Name("choice", "the answer by name"));
            case "count":
                var count = m.Inner("count", "count", "k of n");
                var reading = new CountReading(count.Whole("k", 0, "how many did"), count.Whole("n", 1, "how many were tried"));
                count.Finish();
                return reading.K <= reading.N
                    ? reading
                    : throw new JobException($"The count is {reading.K} of {reading.N}.", "Write k, how many did, of n, how many were tried.");
            case "number":
                return new NumberReading(m.Measured("number", "the number with its unit"));
            case "open":
                _ = m.Flag("open", "the meter shows overload");
                return new OpenReading();
            case "notDone":
                return new NotDoneReading(m.Text("notDone", "why it could not be done"));
            default:
                return m.IsEmpty
                    ? throw new JobException("The reading is empty.", "Give choice, count, number, open or notDone.")
                    : new UnknownReading(m.Raw);
        }
    }

    internal abstract void Write(Utf8JsonWriter json);
}

/// <summary>One of the answers that the check offers.</summary>
/// <param name="Choice">The answer by name, for example <c>jumped</c>.</param>
public sealed record ChoiceReading(string Choice) : Reading
{
    internal override void Write(Utf8JsonWriter json) => json.Text("choice", Choice);
}

/// <summary>So many of so many tries.</summary>
/// <param name="K">How many did; 0 is a good reading.</param>
/// <param name="N">How many were tried, at least 1.</param>
public sealed record CountReading(long K, long N) : Reading
{
    internal override void Write(Utf8JsonWriter json)
    {
        json.WriteStartObject("count");
        json.Whole("k", K);
        json.Whole("n", N);
        json.WriteEndObject();
    }
}

/// <summary>A number off an instrument, not yet corrected for anything.</summary>
/// <param name="Number">Digits and unit.</param>
public sealed record NumberReading(Measured Number) : Reading
{
    internal override void Write(Utf8JsonWriter json) => json.Measured("number", Number);
}

/// <summary>The meter shows overload: an open circuit or a value beyond its range. Not zero, and not "no reading taken".</summary>
public sealed record OpenReading : Reading
{
    internal override void Write(Utf8JsonWriter json) => json.Flag("open", true);
}

/// <summary>The check was tried and could not be done.</summary>
/// <param name="Why">What stood in the way.</param>
public sealed record NotDoneReading(string Why) : Reading
{
    internal override void Write(Utf8JsonWriter json) => json.Text("notDone", Why);
}

/// <summary>A reading of a form that a later version added. Kept and shown, without effect.</summary>
/// <param name="Json">The reading in canonical form.</param>
public sealed record UnknownReading(string Json) : Reading
{
    internal override void Write(Utf8JsonWriter json) => new UnknownBody("reading", Json).Write(json);
}
