using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>
/// One line of a job's log, unchangeable. It is its bytes: everything else here is read out of them, and what was not
/// understood stays in them. Two are equal when their bytes are.
/// </summary>
public sealed class Entry : IEquatable<Entry>
{
    /// <summary>The longest line taken, in bytes. Pictures and traces lie beside the log, so a longer one is a mistake.</summary>
    public const int MaxBytes = 1 << 20;

    private const string AtFormat = "yyyy-MM-dd'T'HH:mm:ss.fff'Z'";

    private Entry(byte[] line, Members envelope, JsonElement body, List<UnknownMember> unknown)
    {
        Line = line;
        Id = envelope.Entry("id", "a UUID of version 7");
        At = ReadAt(envelope);
        Device = envelope.Text("device", "the device that recorded it");
        if (Device.Length > 64 || Device.Any(char.IsControl))
            throw envelope.Bad("device", "is longer than 64 characters or holds control characters", "Give the device a short name.");
        Sequence = envelope.Whole("seq", 1, "the device's own count");
        Parents = envelope.List("parents", "the ids of the entries it follows", EntryId.Parse);
        CheckParents(envelope);
        var kind = envelope.Text("kind", "the kind of entry");
        if (!PartId.IsKind(kind))
            throw envelope.Bad("kind", $"is \"{kind}\"", "Write lower-case letters, digits and hyphens.");
        Body = BodyKinds.Read(kind, body, unknown);
        envelope.Finish();
        Unknown = unknown;
    }

    /// <summary>The canonical bytes without the line feed.</summary>
    public ReadOnlyMemory<byte> Line { get; }

    public EntryId Id { get; }

    /// <summary>When it was recorded, by the device's clock, in whole milliseconds UTC. It orders nothing.</summary>
    public DateTimeOffset At { get; }

    /// <summary>The device that recorded it: text of its own choosing, 1 to 64 characters.</summary>
    public string Device { get; }

    /// <summary>That device's own count within this job, from 1.</summary>
    public long Sequence { get; }

    /// <summary>The entries that were the latest when this one was recorded, ascending; none for a first one.</summary>
    public IReadOnlyList<EntryId> Parents { get; }

    public EntryBody Body { get; }

    /// <summary>Members that this version does not know; empty for kinds it does not know at all (see <see cref="UnknownBody"/>).</summary>
    public IReadOnlyList<UnknownMember> Unknown { get; }

    /// <summary>The line as text.</summary>
    public string Text => Encoding.UTF8.GetString(Line.Span);

    /// <summary>Reads one line, without its line feed. Throws <see cref="JobException"/> when it is not an entry in canonical form.</summary>
    public static Entry Parse(ReadOnlyMemory<byte> line)
    {
        if (line.Length > MaxBytes)
            throw new JobException($"The entry has {line.Length} bytes, more than {MaxBytes}.", "Keep pictures and traces beside the log and name them by their hash.");
        using var document = CanonicalJson.Parse(line);
        var root = document.RootElement;
        if (root.ValueKind != JsonValueKind.Object)
            throw new JobException("The line is not an entry.", "Every line holds one entry, an object in braces.");
        var canonical = CanonicalJson.Of(root);
        if (!canonical.AsSpan().SequenceEqual(line.Span))
            throw NotCanonical(line.Span, canonical);
        var unknown = new List<UnknownMember>();
        var envelope = new Members(root, "entry", "", unknown);
        return new Entry(canonical, envelope, envelope.Required("body", JsonValueKind.Object, "what the entry says"), unknown);
    }

    /// <summary>Reads one line given as text.</summary>
    public static Entry Parse(string line) => Parse(CanonicalText.Bytes(line));

    /// <summary>
    /// Puts an entry together. It is read back before it is returned, so what cannot be read is never written. The time
    /// is cut to the millisecond and written in UTC; the parents may come in any order.
    /// </summary>
    public static Entry Of(EntryId id, DateTimeOffset at, string device, long sequence, IEnumerable<EntryId> parents, EntryBody body)
    {
        var buffer = new ArrayBufferWriter<byte>(512);
        Write(buffer, id, at, device, sequence, parents, body);
        return Parse(CanonicalJson.Of(buffer.WrittenMemory));
    }

    public bool Equals(Entry? other) => other is not null && Line.Span.SequenceEqual(other.Line.Span);

    public override bool Equals(object? obj) => Equals(obj as Entry);

    public override int GetHashCode() => Id.GetHashCode();

    public override string ToString() => Text;

    private static DateTimeOffset ReadAt(Members envelope)
    {
        const string What = "when it was recorded, for example 2026-11-25T10:15:30.123Z";
        var text = envelope.Text("at", What);
        return DateTimeOffset.TryParseExact(text, AtFormat, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var at)
            ? at
            : throw envelope.Bad("at", $"is \"{text}\"", $"Write the time in UTC with milliseconds and Z: {What}.");
    }

    private static JobException NotCanonical(ReadOnlySpan<byte> line, ReadOnlySpan<byte> canonical)
    {
        if (line[^1] == '\r')
            return new JobException("The line ends in a carriage return.", "Save the file with LF line ends.");
        var at = line.CommonPrefixLength(canonical);
        var text = Encoding.UTF8.GetString(canonical);
        return new JobException(
            $"The entry is not in canonical form from byte {at + 1} on: blanks, the order of members or an escape differ.",
            text.Length <= 400 ? $"Write it as {text}" : "Write members in order and without blanks, as docs/job-format.md says.");
    }

    private void CheckParents(Members envelope)
    {
        for (var i = 0; i < Parents.Count; i++)
        {
            if (Parents[i] == Id)
                throw envelope.Bad("parents", "names the entry itself", "Name only entries that were there before.");
            if (i > 0 && Parents[i] <= Parents[i - 1])
                throw envelope.Bad("parents", "is out of order or names an entry twice", "Write the ids in ascending order, each once.");
        }
    }

    private static void Write(
        ArrayBufferWriter<byte> buffer, EntryId id, DateTimeOffset at, string device, long sequence, IEnumerable<EntryId> parents, EntryBody body)
    {
        using var json = new Utf8JsonWriter(buffer);
        json.WriteStartObject();
        json.WriteString("id", id.ToString());
        json.WriteString("at", at.ToUniversalTime().ToString(AtFormat, CultureInfo.InvariantCulture));
        json.Text("device", device);
        json.WriteNumber("seq", sequence);
        json.List("parents", parents.Distinct().Order().ToArray());
        json.WriteString("kind", body.Kind);
        json.WriteStartObject("body");
        body.Write(json);
        json.WriteEndObject();
        json.WriteEndObject();
    }
}
