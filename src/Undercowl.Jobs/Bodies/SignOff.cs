using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>How a job ended.</summary>
public enum JobOutcome
{
    /// <summary>Put right, and shown to be.</summary>
    Proven,

    /// <summary>Thought to be right, not shown.</summary>
    Unproven,

    /// <summary>Handed to somebody else.</summary>
    Referred,

    /// <summary>The customer wanted no more.</summary>
    Declined,

    /// <summary>Made to run for the way home, not put right.</summary>
    GetHome,

    /// <summary>Not worth the money.</summary>
    Uneconomic,

    /// <summary>The complaint could not be brought about.</summary>
    NoFaultFound,
}

/// <summary>The job ends, so far. Entries after it are allowed; a comeback is a new job that names this one.</summary>
/// <param name="Outcome">How it ended.</param>
/// <param name="By">Who signs.</param>
/// <param name="Open">What stays open, in words; empty when nothing does.</param>
public sealed record SignOff(JobOutcome Outcome, string By, IReadOnlyList<string> Open) : EntryBody
{
    internal const string KindName = "sign-off";

    public override string Kind => KindName;

    internal static SignOff Read(Members m) => new(
        m.OneOf<JobOutcome>("outcome", "how it ended"),
        m.Text("by", "who signs"),
        m.List("open", "what stays open", text => text));

    internal override void Write(Utf8JsonWriter json)
    {
        json.Word<JobOutcome>("outcome", Outcome);
        json.Text("by", By);
        json.List("open", Open);
    }
}
