using System.Text.Json.Serialization;
using Undercowl.Diagnosis.Answers;

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
/// <param name="Telling">Changes with every entry that may change an answer: their number and the last. That cautions were read changes none.</param>
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
    string Telling = "",
    bool Archived = false,
    DateTimeOffset? Erased = null,
    bool Demo = false);

/// <summary>The step that is put, with the currency of its costs; no step when nothing is left to propose.</summary>
public sealed record StepShown(ProposedStep? Now, string Currency);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(JobHead))]
[JsonSerializable(typeof(JobHead[]))]
[JsonSerializable(typeof(StepShown))]
[JsonSerializable(typeof(DemoStart))]
internal sealed partial class DeskJson : JsonSerializerContext;
