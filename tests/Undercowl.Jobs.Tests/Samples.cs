using System.Text;

namespace Undercowl.Jobs.Tests;

/// <summary>Ids and entries that tests share: every kind once with all its members and, where it has optional ones, once without.</summary>
internal static class Samples
{
    public const string Device = "tablet-3";

    // 2026-11-25T10:15:30.123Z; what follows it in the ids is arbitrary.
    private const long Start = 1795601730123;

    public static readonly IReadOnlyDictionary<string, string> NoSetUp = new Dictionary<string, string>();

    public static EntryId Id(int number) => EntryId.Of(Start + number, (UInt128)(uint)number);

    public static Dictionary<string, string> SetUp(params (string Key, string Value)[] pairs) => pairs.ToDictionary(pair => pair.Key, pair => pair.Value);

    public static Entry Entry(EntryBody body, int number = 9, params int[] parents) =>
        Jobs.Entry.Of(Id(number), DateTimeOffset.FromUnixTimeMilliseconds(Start + number), Device, number, parents.Select(Id), body);

    /// <summary>An entry line with this kind and body, canonical whatever the order the body is given in.</summary>
    public static string Line(string kind, string body) => Encoding.UTF8.GetString(CanonicalJson.Of(Encoding.UTF8.GetBytes(
        $$"""{"at":"2026-11-25T10:15:30.123Z","body":{{body}},"device":"tablet-3","id":"{{Id(9)}}","kind":"{{kind}}","parents":[],"seq":9}""")));

    public static Finding Spark(string place = "cyl:2", string choice = "jumped") =>
        new("spark-at-tester", 1, Place.Parse(place), NoSetUp, "opening", "technician", new ChoiceReading(choice));

    public static Opened Opened() => new(
        EmbeddedJson.Of("""{"strokes":2,"cylinders":3,"name":"three in line"}"""), Sha256Text.Of("knowledge"u8), new Complaint("dies-hot", NoSetUp));

    public static IReadOnlyList<EntryBody> Bodies { get; } =
    [
        Opened(),
        Opened() with { Complaint = new Complaint("misses", SetUp(("load", "full")), "„stottert“ bei Vollgas\nsays the owner"), Previous = Id(1) },
        new Layout(EmbeddedJson.Of("""{"strokes":2,"cylinders":2}"""), "only two leads"),
        new Complaint("hard-to-start-cold", SetUp(("heat", "cold"))),
        new Plate(SetUp(("model", "40 hp, long shaft"), ("serial", "0123"), ("hours", "412"))),
        new Intake("last-done", "refuelled"),
        new Intake("last-done", "washed-down", "owner", true, "hosed it off"),
        new Ambient(Temperature: Measured.Of("-3.50", "°C")),
        new Ambient(Measured.Of("18", "°C"), Measured.Of("1013.2", "hPa"), Measured.Of("0", "m"), Measured.Of("80", "%")),
        new Specs(PartId.Parse("charge-coil"), "resistance", "service manual, 3-12", Measured.Of("220", "ohm"), Measured.Of("260", "ohm")),
        new Specs(PartId.Parse("charge-coil@bank:A/slow"), "peak-voltage", "service manual, 3-14", Low: Measured.Of("150", "V"), Nominal: Measured.Of("180", "V")),
        new Tools(["spark-tester", "meter"], ["peak-adaptor"]),
        new Tools([], []),
        new Rate(Money.Of("72.50", "EUR")),
        Spark(),
        Spark("pair:1+4", "0-of-2") with
        {
            SetUp = SetUp(("stop-wire", "off"), ("tester-gap", "11 mm")), Output = "out-1", Tool = "spark-tester", Hearsay = true,
            Act = "first crank", Against = ["smell"], Minutes = 4, Words = "thin",
        },
        Spark() with { Value = new CountReading(0, 3) },
        Spark() with { Value = new NumberReading(Measured.Of("0.90", "mm")) },
        Spark() with { Value = new OpenReading() },
        Spark() with { Value = new NotDoneReading("cap seized") },
        Spark() with { Value = new UnknownReading("""{"trace":"sha256:00"}""") },
        new Cranked(10),
        new Cranked(7, "first crank"),
        new Swap("ignition-coil", Place.Parse("cyl:2"), Place.Parse("cyl:3")),
        new Swap("control-unit", Place.Parse("bank:A"), Place.Parse("bank:B"), "out-2"),
        new Remedy("replace-plug", 1, Place.Parse("cyl:2")),
        new Remedy("replace-plug", 2, Place.Engine)
        {
            Output = "out-1", Result = RemedyResult.InPart, Against = ["cylinders-cleared"], Minutes = 12, Hand = "apprentice", Words = "thread dry",
            Parts = [new FittedPart(PartId.Parse("plug@cyl:2"), "1234-5", Money.Of("9.80", "EUR"), true), new FittedPart(PartId.Parse("washer"))],
            Figures = new Dictionary<string, Measured> { ["gap"] = Measured.Of("0.9", "mm"), ["torque@cyl:2"] = Measured.Of("25", "N·m") },
        },
        new Result(Id(2), RemedyResult.ForATime),
        new Result(Id(2), RemedyResult.NewFault, "now it surges"),
        new SetUpChange(SetUp(("stop-wire", "on"))),
        new SetUpChange(SetUp(("plug", "out")), Place.Parse("group:1+2+3")),
        new Ventilated(["cowl", "bilge"]),
        new Ventilated(["tank"], "owner"),
        new CautionAcknowledged("high-voltage"),
        new CautionAcknowledged("high-voltage", SetUp(("stop-wire", "off")), "apprentice"),
        new Interlock("air", "clear"),
        new Interlock("holes", "closed", Place.Parse("cyl:1"), "apprentice"),
        new Occasion(Heat.Hot, "ran until it died"),
        new Occasion(Heat.Cold, "connector touched", [PartId.Parse("group-connector@side:engine")]),
        new Declined("flywheel-off", "no puller"),
        new Declined("compression", "too dear", Place.Parse("side:boat"), "owner"),
        new Approved("one ignition coil, cures nine times in ten", "owner"),
        new Approved("up to two hours", "owner", Money.Of("150", "EUR")),
        new Note("came by trailer"),
        new Note("see both", [Id(1), Id(2)]),
        new Photo(Sha256Text.Of("picture"u8), "image/jpeg", 48211),
        new Photo(Sha256Text.Of("picture"u8), "image/jpeg", 1, [Id(1)], PartId.Parse("plug@cyl:1"), "wet"),
        new Withdrawn(Id(3), "lead was on the wrong plug"),
        new Proof([Id(4), Id(5)], "ran twenty minutes past the former failure"),
        new SignOff(JobOutcome.GetHome, "technician", ["stop wire spliced"]),
        new SignOff(JobOutcome.Proven, "technician", []),
        new UnknownBody("trace", """{"hash":"sha256:00","samples":4096,"channels":["primary"]}"""),
    ];
}
