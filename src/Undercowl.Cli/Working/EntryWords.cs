using Undercowl.Diagnosis;
using Undercowl.Diagnosis.Working;
using Undercowl.Jobs;

namespace Undercowl.Cli;

/// <summary>An entry on one line, by ids, for the person who has just made it. The report has it in words.</summary>
internal static class EntryWords
{
    public const int ShortLength = 8;

    /// <summary>The end of an id, which tells entries of one job apart; commands take it in the place of the whole.</summary>
    public static string Short(EntryId id) => id.ToString()[^ShortLength..];

    public static string Of(EntryBody body) => body switch
    {
        Finding f => $"{f.Check} at {f.Place}: {Reading(f.Value)}",
        Remedy r => $"{r.Action} at {r.Place}{(r.Result is { } came ? $": {Drafting.Word(came)}" : "")}",
        Result r => $"{Drafting.Word(r.Came)}: what came of {Short(r.Of)}",
        Swap s => $"swap {s.Part} {s.A} {s.B}{(s.Output is null ? "" : $" output {s.Output}")}",
        SetUpChange c => $"set-up {string.Join(' ', c.Change.Select(p => $"{p.Key}={p.Value}"))}",
        Intake i => $"{i.Question}: {i.Answer}",
        Interlock i => $"{i.Id}: {i.State}",
        Ventilated v => $"clear of vapour: {string.Join(", ", v.Clear)}",
        CautionAcknowledged c => $"caution read: {c.Caution}",
        Declined d => $"declined {d.What}{(d.Place is { } at ? $" at {at}" : "")}: {d.Why}",
        Withdrawn w => $"taken back {Short(w.Entry)}",
        Occasion o => $"new occasion, {o.Heat.ToString().ToLowerInvariant()}: {o.Why}",
        Specs s => $"{s.Part} {s.Item}",
        SignOff s => $"signed off as {Outcomes.Text(s.Outcome)}",
        _ => body.Kind,
    };

    private static string Reading(Reading reading) => reading switch
    {
        ChoiceReading choice => choice.Choice,
        CountReading count => $"{count.K} of {count.N}",
        NumberReading number => number.Number.ToString(),
        OpenReading => "open",
        NotDoneReading not => $"not-done: {not.Why}",
        _ => "?",
    };
}
