using Undercowl.Diagnosis.Tests.Fixtures;

namespace Undercowl.Diagnosis.Tests.Why;

/// <summary>Three jobs of our own told to the end, each with the cause that was mended.</summary>
internal static class Finished
{
    public static IReadOnlyList<(string Title, Story Story, string Cause)> Jobs { get; } =
    [
        ("A grounded stop wire", StopWire(), "engine-harness@side:engine.stop-wire=grounded"),
        ("One dead coil", Coil(), "ignition-coil@cyl:2.winding=open"),
        ("A shut tank vent", Vent(), "tank-vent@side:boat.passage=shut"),
    ];

    private static Story StopWire() => Shop.Story("two-stroke-3-cdi", "no-start")
        .Find("battery-cranking-volts", "11.0 V", "side:boat")
        .Find("cranking-rpm", "320 rpm")
        .FindAll("spark-to-ground", "never", [1, 2, 3])
        .FindAll("spark-stop-wire-off", "always", [1, 2, 3])
        .FindAll("spark-harness-apart", "never", [1])
        .SetUp("stop-wire", "on").SetUp("harness-plug", "joined")
        .Remedy("mend-engine-stop-wire", "side:engine")
        .FindAll("spark-to-ground", "always", [1, 2, 3])
        .Find("starting-test", "runs-well");

    private static Story Coil() => Shop.Story("two-stroke-3-cdi", "misses")
        .FindAll("spark-to-ground", "always", [1, 3])
        .Find("spark-to-ground", "never", "cyl:2")
        .Find("plug-deposit", "tan", "cyl:2")
        .Find("coil-secondary-ohms", "3.1 kohm", "cyl:2")
        .Swap("ignition-coil", "cyl:2", "cyl:3")
        .Find("spark-to-ground", "always", "cyl:2")
        .Find("spark-to-ground", "never", "cyl:3")
        .Remedy("replace-ignition-coil", "cyl:3")
        .FindAll("spark-to-ground", "always", [2, 3]);

    private static Story Vent() => Shop.Story("two-stroke-3-cdi", "dies-hot")
        .FindAll("spark-to-ground", "always", [1, 2, 3], ("heat", "hot"))
        .Find("bulb-feel", "flat", null, ("heat", "hot"))
        .Find("tank-vent-open", "shut")
        .Remedy("open-vent")
        .Find("bulb-feel", "firm")
        .Find("hot-run-test", "runs-well");
}
