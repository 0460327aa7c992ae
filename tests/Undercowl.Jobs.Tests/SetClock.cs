namespace Undercowl.Jobs.Tests;

/// <summary>A clock that stands until it is set.</summary>
internal sealed class SetClock : TimeProvider
{
    public DateTimeOffset Now { get; set; } = new(2026, 11, 25, 10, 15, 30, 123, TimeSpan.Zero);

    public override DateTimeOffset GetUtcNow() => Now;
}

internal static class Seeded
{
    public static RandomFill Random(int seed)
    {
        var random = new Random(seed);
        return buffer => random.NextBytes(buffer);
    }
}
