using System.Collections.Frozen;
using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>The kinds of entry that this version knows, and the reader of each.</summary>
public static class BodyKinds
{
    private static readonly FrozenDictionary<string, Func<Members, EntryBody>> Readers = new Dictionary<string, Func<Members, EntryBody>>
    {
        [Ambient.KindName] = Ambient.Read,
        [Approved.KindName] = Approved.Read,
        [CautionAcknowledged.KindName] = CautionAcknowledged.Read,
        [Complaint.KindName] = Complaint.Read,
        [Cranked.KindName] = Cranked.Read,
        [Declined.KindName] = Declined.Read,
        [Finding.KindName] = Finding.Read,
        [Intake.KindName] = Intake.Read,
        [Interlock.KindName] = Interlock.Read,
        [Layout.KindName] = Layout.Read,
        [Note.KindName] = Note.Read,
        [Occasion.KindName] = Occasion.Read,
        [Opened.KindName] = Opened.Read,
        [Photo.KindName] = Photo.Read,
        [Plate.KindName] = Plate.Read,
        [Proof.KindName] = Proof.Read,
        [Rate.KindName] = Rate.Read,
        [Remedy.KindName] = Remedy.Read,
        [Result.KindName] = Result.Read,
        [SetUpChange.KindName] = SetUpChange.Read,
        [SignOff.KindName] = SignOff.Read,
        [Specs.KindName] = Specs.Read,
        [Swap.KindName] = Swap.Read,
        [Tools.KindName] = Tools.Read,
        [Ventilated.KindName] = Ventilated.Read,
        [Withdrawn.KindName] = Withdrawn.Read,
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The known kinds as written, in ordinal order.</summary>
    public static IReadOnlyList<string> Known { get; } = [.. Readers.Keys.Order(StringComparer.Ordinal)];

    internal static EntryBody Read(string kind, JsonElement body, List<UnknownMember> unknown)
    {
        if (!Readers.TryGetValue(kind, out var read))
            return new UnknownBody(kind, body.GetRawText());
        var members = new Members(body, kind, "body", unknown);
        var result = read(members);
        members.Finish();
        return result;
    }
}
