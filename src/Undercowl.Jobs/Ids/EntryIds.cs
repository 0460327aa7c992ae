using System.Buffers.Binary;

namespace Undercowl.Jobs;

/// <summary>Fills a buffer with random bytes; programs pass <c>RandomNumberGenerator.Fill</c>, tests a seeded source.</summary>
public delegate void RandomFill(Span<byte> buffer);

/// <summary>
/// Makes entry ids for one device, each greater than the one before, also within a millisecond and when the clock is
/// set back (RFC 9562, 6.2, method 2: the random tail is raised by a random step). Not for use by several threads.
/// </summary>
public sealed class EntryIds(TimeProvider clock, RandomFill random)
{
    private const long LastMillisecond = (1L << 48) - 1;

    private EntryId last;

    /// <summary>The next id.</summary>
    /// <param name="after">An id that it must exceed as well: the device's last one in the job. Default: none.</param>
    public EntryId Next(EntryId after = default)
    {
        var floor = after > last ? after : last;
        var now = clock.GetUtcNow().ToUnixTimeMilliseconds();
        if (now is < 0 or > LastMillisecond)
            throw new JobException("The device's clock is set before 1970 or after the year 10889.", "Set the clock of the device.");
        if (floor.IsNone || now > floor.Milliseconds)
            return last = EntryId.Of(now, RandomTail());
        var tail = floor.Tail + 1 + RandomStep();
        return last = tail < EntryId.TailLimit
            ? EntryId.Of(floor.Milliseconds, tail)
            : EntryId.Of(floor.Milliseconds + 1, RandomTail());
    }

    private UInt128 RandomTail()
    {
        Span<byte> bytes = stackalloc byte[16];
        random(bytes);
        return BinaryPrimitives.ReadUInt128BigEndian(bytes) & (EntryId.TailLimit - 1);
    }

    private uint RandomStep()
    {
        Span<byte> bytes = stackalloc byte[4];
        random(bytes);
        return BinaryPrimitives.ReadUInt32BigEndian(bytes);
    }
}
