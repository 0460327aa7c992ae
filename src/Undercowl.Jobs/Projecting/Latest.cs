namespace Undercowl.Jobs;

/// <summary>
/// What was said last on each subject. Last means latest in canonical order among the entries that hold: an entry never
/// loses to one that it followed, and where two devices spoke independently every copy picks the same one.
/// </summary>
public sealed partial class Projection
{
    /// <summary>The opening; null when it is missing or was withdrawn.</summary>
    public Said<Opened>? Opening => All<Opened>().LastOrDefault();

    /// <summary>The engine layout that holds: the last correction, or the opening's. Null without an opening.</summary>
    public EmbeddedJson? Layout => All<Layout>().LastOrDefault()?.Body.Composed ?? Opening?.Body.Layout;

    /// <summary>All complaints that hold: the opening's first, then those added.</summary>
    public IReadOnlyList<Complaint> Complaints =>
        [.. All<Opened>().Select(said => said.Body.Complaint), .. All<Complaint>().Select(said => said.Body)];

    /// <summary>Temperature, pressure, altitude and humidity by name, as far as they were given.</summary>
    public IReadOnlyDictionary<string, Measured> Ambient => Last<Ambient, string, Measured>(said => Given(
        ("temperature", said.Body.Temperature), ("pressure", said.Body.Pressure), ("altitude", said.Body.Altitude), ("humidity", said.Body.Humidity)));

    /// <summary>The engine's own figures, by part and item.</summary>
    public IReadOnlyDictionary<(PartId Part, string Item), Said<Specs>> Specs =>
        Last<Specs, (PartId, string), Said<Specs>>(said => [((said.Body.Part, said.Body.Item), said)]);

    /// <summary>For each tool that was mentioned, whether it is at hand.</summary>
    public IReadOnlyDictionary<string, bool> Tools => Last<Tools, string, bool>(said =>
        [.. said.Body.Have.Select(tool => (tool, true)), .. said.Body.Lack.Select(tool => (tool, false))]);

    /// <summary>What an hour costs; null when it was not said.</summary>
    public Money? PerHour => All<Rate>().LastOrDefault()?.Body.PerHour;

    /// <summary>What the engine's plate says, by name.</summary>
    public IReadOnlyDictionary<string, string> Plate => Last<Plate, string, string>(said => said.Body.Facts.Select(fact => (fact.Key, fact.Value)));

    /// <summary>The last answer to each question of the interlocks, by question and place (the engine where none was given).</summary>
    public IReadOnlyDictionary<(string Id, Place Place), Said<Interlock>> Interlocks =>
        Last<Interlock, (string, Place), Said<Interlock>>(said => [((said.Body.Id, said.Body.Place ?? Place.Engine), said)]);

    /// <summary>The last sign-off, unless something was found or done after it; null while the job is open.</summary>
    public Said<SignOff>? Ending => Live
        .Select(entry => entry.Body is SignOff signed ? new Said<SignOff>(entry, signed) : null)
        .Zip(Live)
        .LastOrDefault(pair => pair.First is not null || pair.Second.Body is Finding or Swap or Remedy or SetUpChange or Opened)
        .First;

    /// <summary>What came of a remedy: the last result said of it, or the one noted with it; null while it is not known.</summary>
    public RemedyResult? ResultOf(EntryId remedy) =>
        All<Result>().LastOrDefault(said => said.Body.Of == remedy)?.Body.Came ?? (Job.Find(remedy)?.Body as Remedy)?.Result;

    private static IEnumerable<(string, Measured)> Given(params (string Name, Measured? Value)[] values) =>
        values.Where(pair => pair.Value is not null).Select(pair => (pair.Name, pair.Value!));

    private Dictionary<TKey, TValue> Last<TBody, TKey, TValue>(Func<Said<TBody>, IEnumerable<(TKey Key, TValue Value)>> say)
        where TBody : EntryBody
        where TKey : notnull
    {
        var last = new Dictionary<TKey, TValue>();
        foreach (var said in All<TBody>())
        {
            foreach (var (key, value) in say(said))
                last[key] = value;
        }

        return last;
    }
}
