using System.Text.Json.Serialization;

namespace Undercowl.App.Desk;

/// <summary>What the list shows of a job without opening it. Kept beside the entries, and made again from them on import.</summary>
/// <param name="Id">Id of the opening entry.</param>
/// <param name="Title">The boat or engine, as the technician calls it.</param>
/// <param name="Layout">The engine layout in words.</param>
/// <param name="Complaint">The complaint in words.</param>
/// <param name="Words">The customer's own words.</param>
/// <param name="Opened">When it began.</param>
/// <param name="Changed">When something was last recorded.</param>
/// <param name="Outcome">How it ended; open while it has not.</param>
/// <param name="Archived">True when it is put out of the way.</param>
/// <param name="Erased">When it was thrown away; null when it was not.</param>
/// <param name="Demo">True for the demonstration.</param>
public sealed record JobHead(
    string Id,
    string Title,
    string Layout,
    string Complaint,
    string? Words,
    DateTimeOffset Opened,
    DateTimeOffset Changed,
    string Outcome,
    bool Archived = false,
    DateTimeOffset? Erased = null,
    bool Demo = false);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(JobHead))]
[JsonSerializable(typeof(JobHead[]))]
[JsonSerializable(typeof(DemoOpening))]
internal sealed partial class DeskJson : JsonSerializerContext;

/// <summary>How the demonstration's invented job begins.</summary>
internal sealed record DemoOpening(string Layout, string Complaint, string? Words, IReadOnlyList<DemoAnswered> Intake);

internal sealed record DemoAnswered(string Question, string Answer);
