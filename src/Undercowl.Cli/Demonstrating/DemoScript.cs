using System.Text.Json.Serialization;

namespace Undercowl.Cli.Demonstrating;

/// <summary>
/// An invented engine with one hidden fault, and what each check reads on it. Data of the demonstration only; documented
/// in docs/terminal.md.
/// </summary>
internal sealed record DemoScript
{
    public required string About { get; init; }

    public required string Layout { get; init; }

    public required string Complaint { get; init; }

    public string? Words { get; init; }

    public IReadOnlyList<DemoIntake> Intake { get; init; } = [];

    /// <summary>The hidden fault, as <c>belief</c> writes causes. Nothing is computed from it; the answers below are.</summary>
    public required string Hidden { get; init; }

    /// <summary>Remedies, any of which puts the hidden fault right.</summary>
    public required IReadOnlyList<DemoRemedy> Mends { get; init; }

    /// <summary>What checks read; the first rule that fits counts.</summary>
    public required IReadOnlyList<DemoRule> Answers { get; init; }

    public required string SignedBy { get; init; }
}

internal sealed record DemoIntake(string Question, string Answer);

/// <param name="Remedy">The remedy.</param>
/// <param name="At">Where; null for anywhere.</param>
internal sealed record DemoRemedy(string Remedy, string? At = null);

/// <summary>What some checks read on the invented engine.</summary>
/// <param name="Checks">The checks.</param>
/// <param name="Reading">The reading, as it would be typed.</param>
/// <param name="At">The places; null for any.</param>
/// <param name="SetUp">Set-up values that must hold; null for any.</param>
/// <param name="Mended">True: only once the hidden fault is mended; false: only before; null: either.</param>
internal sealed record DemoRule(
    IReadOnlyList<string> Checks,
    string Reading,
    IReadOnlyList<string>? At = null,
    IReadOnlyDictionary<string, string>? SetUp = null,
    bool? Mended = null);

[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow, RespectNullableAnnotations = true)]
[JsonSerializable(typeof(DemoScript))]
internal sealed partial class DemoJson : JsonSerializerContext;
