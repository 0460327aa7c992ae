using CsCheck;

namespace Undercowl.Jobs.Tests;

/// <summary>One thing that happens on one of several devices: it records something, or takes over another's copy.</summary>
internal sealed record Step(int Device, int Action, int Pick);

/// <summary>
/// Devices that record on copies of one job and now and then take each other's copy over, as random steps say. Their
/// clocks are hours apart and go at random, also backwards.
/// </summary>
internal static class Simulation
{
    public const int Devices = 3;

    public static Gen<Step[]> Steps(int most) => Gen.Select(Gen.Int[0, Devices - 1], Gen.Int[0, 9], Gen.Int[0, 1000], (device, action, pick) => new Step(device, action, pick)).Array[0, most];

    public static Job[] Run(Step[] steps)
    {
        var clocks = Enumerable.Range(0, Devices).Select(i => new SetClock { Now = new DateTimeOffset(2026, 11, 25, 8 + i, 0, 0, TimeSpan.Zero) }).ToArray();
        var writers = clocks.Select((clock, i) => new EntryWriter($"device-{i}", clock, Seeded.Random(i))).ToArray();
        var start = Job.Empty.With(writers[0].Next(Job.Empty, Samples.Opened()));
        var copies = Enumerable.Repeat(start, Devices).ToArray();
        foreach (var step in steps)
        {
            var own = copies[step.Device];
            clocks[step.Device].Now += TimeSpan.FromMilliseconds(step.Pick % 7 * 1000 - 1500);
            copies[step.Device] = step.Action == 0
                ? own.Merge(copies[step.Pick % Devices])
                : own.With(writers[step.Device].Next(own, Body(step, own)));
        }

        return copies;
    }

    private static EntryBody Body(Step step, Job job) => step.Action switch
    {
        1 => new Swap("ignition-coil", Place.Parse("cyl:1"), Place.Parse("cyl:2")),
        2 => new Remedy("replace-plug", 1, Place.Parse("cyl:1")),
        3 or 4 => new Withdrawn(job.Entries[step.Pick % job.Count].Id, "mistaken"),
        5 => new SetUpChange(Samples.SetUp(("stop-wire", "off"))),
        6 => new Occasion(Heat.Hot, "ran"),
        _ => Samples.Spark(),
    };
}
