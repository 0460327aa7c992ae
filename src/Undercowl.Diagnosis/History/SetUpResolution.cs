using System.Globalization;
using Undercowl.Diagnosis.Engine;
using Undercowl.Diagnosis.Readings;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.History;

/// <summary>The whole set-up of a check at a place: the engine as it stands, what the check brings about, what the user says.</summary>
internal static class SetUpResolution
{
    /// <summary>The set-up in which a complaint shows: as it was said, else as it usually does.</summary>
    public static IReadOnlyDictionary<string, string> Of(Jobs.Complaint said, Knowledge.Complaint complaint) => said.SetUp.Count > 0 ? said.SetUp : complaint.SetUp;

    public const string Here = "@here";

    /// <summary>Every engine-wide key, the keys of single cylinders that are not at their default, and the tool's settings.</summary>
    public static Dictionary<string, string> Of(
        EngineModel model, Check check, string place, StandingEngine standing, IReadOnlyDictionary<string, string>? said = null)
    {
        var setUp = model.Knowledge.SetUps.Where(k => k.Per == QuantityScope.Engine).ToDictionary(k => k.Id, k => k.Default);
        foreach (var (key, value) in standing.Left)
        {
            setUp[key] = value;
        }

        foreach (var (key, value) in check.SetUp)
        {
            setUp[There(key, place)] = value;
        }

        foreach (var setting in check.Settings)
        {
            if (setting.Defaults.FirstOrDefault(d => d.Only.Holds(model.Layout)) is { } value)
            {
                setUp[setting.Id] = string.Create(CultureInfo.InvariantCulture, $"{value.Value} {setting.Unit}");
            }
        }

        foreach (var (key, value) in said ?? new Dictionary<string, string>())
        {
            setUp[key] = Said(model, check, key, value, standing);
        }

        return setUp;
    }

    /// <summary>True when the check itself brings the state about.</summary>
    public static bool Brings(Check check, string place, string name) => check.SetUp.Keys.Any(key => There(key, place) == name);

    private static string There(string key, string place) => key.EndsWith(Here, StringComparison.Ordinal) ? key[..^Here.Length] + "@" + place : key;

    private static string Said(EngineModel model, Check check, string name, string text, StandingEngine standing)
    {
        if (check.Settings.FirstOrDefault(s => s.Id == name) is { } setting)
        {
            return Measurement.TryParse(text, setting.Unit) is { } measured && Units.Convert((double)measured.Value.Value, measured.Unit, setting.Unit) is { } value
                ? string.Create(CultureInfo.InvariantCulture, $"{value:0.####} {setting.Unit}")
                : throw new DiagnosisException($"\"{text}\" is no {setting.Name}.", $"Give a number in {setting.Unit}, for example {name}=11{setting.Unit}.");
        }

        var at = name.IndexOf('@', StringComparison.Ordinal);
        var id = at < 0 ? name : name[..at];
        var key = model.SetUpKey(id) ?? throw new DiagnosisException(
            $"There is no set-up key \"{id}\".", Near.Mend(id, model.Knowledge.SetUps.Select(k => k.Id).Concat(check.Settings.Select(s => s.Id))));
        Placed(model, key, at < 0 ? null : name[(at + 1)..], text);
        if (key.Values.All(v => v.Id != text))
        {
            throw new DiagnosisException($"\"{text}\" is no value of {id}.", Near.Mend(text, key.Values.Select(v => v.Id)));
        }

        // What stands so, as in a log from elsewhere, can always be undone.
        return SetUpsHere.Values(model, key).Any(v => v.Id == text) || (text == key.Default && standing.Restore.Any(r => r.Key == name))
            ? text
            : throw new DiagnosisException(
                $"The set-up {id}={text} does not apply to this engine.",
                $"It has: {string.Join("; ", SetUpsHere.Keys(model).Select(k => $"{k.Id} ({string.Join(", ", SetUpsHere.Values(model, k).Select(v => v.Id))})"))}.");
    }

    /// <summary>Refuses a key of a cylinder without one of this engine's cylinders, and a key of the engine with any place.</summary>
    private static void Placed(EngineModel model, SetUpKey key, string? place, string text)
    {
        if (key.Per == QuantityScope.Engine)
        {
            if (place is not null)
            {
                throw new DiagnosisException($"The set-up key \"{key.Id}\" belongs to the whole engine.", $"Write {key.Id}={text}.");
            }
        }
        else if (place is null)
        {
            throw new DiagnosisException($"The set-up key \"{key.Id}\" belongs to a cylinder.", $"Write {key.Id}@cyl:1={text} with the cylinder meant.");
        }
        else if (LayoutPlaces.Expand(model.Layout, LayoutPlaces.EachCylinder) is var cylinders && !cylinders.Contains(place))
        {
            throw new DiagnosisException($"\"{place}\" is no cylinder of this engine.", Near.Mend(place, cylinders));
        }
    }
}
