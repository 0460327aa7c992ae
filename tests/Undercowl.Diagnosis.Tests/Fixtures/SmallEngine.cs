using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Tests.Fixtures;

/// <summary>
/// An invented engine of two lanes with few parts, small enough to enumerate. It has every way of combining but the spark
/// physics, a shared part, faults with a trigger and faults that come and go, a passing state, a consequence, a set-up of
/// every sort, two kinds of remedy and a tool that errs.
/// </summary>
internal static class SmallEngine
{
    public static EngineLayout Layout { get; } = new()
    {
        Id = "small",
        Name = "Two lanes",
        Cylinders = 2,
        Attributes = new() { ["strokes"] = "2" },
        Parts =
        [
            new() { Part = "source", At = new(["engine"]) },
            new() { Part = "stop", At = new(["side:engine"]) },
            new() { Part = "coil", At = new(["each cyl"]) },
            new() { Part = "plug", At = new(["cyl:1"]) },
            new() { Part = "ring", At = new(["cyl:1"]) },
        ],
    };

    public static KnowledgeBase Knowledge { get; } = new()
    {
        Sources = [new() { Id = "invented", Kind = SourceKind.Estimate, Cite = "invented for a test" }],
        Parts =
        [
            Part("source", Aspect("winding", Fault("weak", 0.05, ("supply", "low")), Fault("dead", 0.03, ("supply", "none")))),
            Part("stop", Aspect("wire", Fault("shorted", 0.04, ("stopped", "yes")), Fault("rubbing", 0.05, ("stopped", "yes")) with { Shows = 0.4 })),
            Part("coil", Aspect(
                "winding",
                Fault("open", 0.06, ("kv", "none")),
                Fault("open-hot", 0.03, ("kv", "none")) with { When = new() { ["heat"] = new(["hot"]) } })) with { Swappable = true },
            Part(
                "plug",
                Aspect("wear", Fault("worn", 0.2, ("gap", "wide"))),
                Aspect("deposit", Fault("oily", 0.02, ("foul", "yes"))) with
                {
                    Consequence = true,
                    Given = new() { Quantity = "oil", Rows = new() { ["yes"] = new() { ["oily"] = 0.6 } }, Source = "invented" },
                },
                Aspect("wetness", Fault("wet", 0.1, ("foul", "yes"))) with { Passing = true }) with { Swappable = true },
            Part("ring", Aspect("face", Fault("worn", 0.07, ("oil", "yes")))),
        ],
        Quantities =
        [
            Quantity("supply", QuantityScope.Cyl, ["good", "low", "none"], Combination.WorstOf),
            Quantity("stopped", QuantityScope.Engine, ["no", "yes"], Combination.Any),
            Quantity("kv", QuantityScope.Cyl, ["strong", "weak", "none"], Combination.WorstOf,
                Input("supply", ("good", "strong"), ("low", "weak"), ("none", "none")), Input("stopped", ("yes", "none"))),
            Quantity("gap", QuantityScope.Cyl, ["right", "wide"], Combination.WorstOf),
            Quantity("foul", QuantityScope.Cyl, ["no", "yes"], Combination.Any),
            Quantity("oil", QuantityScope.Cyl, ["no", "yes"], Combination.Any),
            Quantity("spark", QuantityScope.Cyl, ["fires", "dead"], Combination.Table, Input("kv"), Input("gap"), Input("foul")) with
            {
                Rows =
                [
                    new() { When = new() { ["kv"] = new(["none"]) }, Is = "dead" },
                    new() { When = new() { ["kv"] = new(["weak"]), ["gap"] = new(["wide"]) }, Is = "dead" },
                    new() { When = new() { ["kv"] = new(["weak"]), ["foul"] = new(["yes"]) }, Is = "dead" },
                    new() { Is = "fires" },
                ],
            },
            Quantity("firing", QuantityScope.Engine, ["all", "one-dead", "more-dead", "none"], Combination.CountFold, Input("spark")),
        ],
        SetUps =
        [
            Key("heat", QuantityScope.Engine, "cold", Value("cold"), Value("warm"), Value("hot")) with { EndsOccasion = true },
            Key("stop-wire", QuantityScope.Engine, "on", Value("on"),
                Value("off") with { Cuts = new() { ["kv"] = new(["stopped"]) }, Restore = "Put it back on." }),
            Key("engine", QuantityScope.Engine, "standing", Value("standing"),
                Value("popping") with { Impossible = new() { ["firing"] = new(["none"]) } },
                Value("running") with { Impossible = new() { ["firing"] = new(["more-dead", "none"]), ["stopped"] = new(["yes"]) } }),
            Key("booster", QuantityScope.Engine, "off", Value("off"), Value("on") with { Lifts = new() { ["supply"] = 1 } }),
            Key("no-coil", QuantityScope.Cyl, "no", Value("no"), Value("yes") with { Without = ["coil"] }),
            Key("known-good", QuantityScope.Cyl, "no", Value("no"), Value("plug") with { KnownGood = ["plug"], NotGood = 0.05, Source = "invented" }),
            Key("forced", QuantityScope.Cyl, "no", Value("no"), Value("dry") with { Sets = new() { ["foul"] = "no" } }),
        ],
        Tools = [new() { Id = "tester", Name = "tester", Aspects = [new() { Id = "clip", Name = "clip", Conditions = [new() { Id = "off", Name = "off", Prior = 0.05, Source = "invented", ReadsAsWorst = true }] }] }],
        Hands = [new() { Id = "technician", Name = "technician", Doubt = 0, Source = "invented" }, new() { Id = "caller", Name = "caller", Doubt = 0.2, Source = "invented" }],
        Checks =
        [
            Check("spark-seen", "cyl", "kv", [("yes", [0.97, 0.6, 0.02]), ("no", [0.03, 0.4, 0.98])]) with { Tools = ["tester"] },
            Check("runs", "engine", "firing", [("well", [0.97, 0.1, 0.02, 0.01]), ("rough", [0.02, 0.8, 0.28, 0.01]), ("not", [0.01, 0.1, 0.7, 0.98])]),
            Check("plug-look", "cyl", null, [("tan", [0.8, 0.2]), ("oily", [0.2, 0.8])], aspect: "plug.deposit"),
            new()
            {
                Id = "coil-ohms", Revision = 1, Name = "coil-ohms", Ask = "?", At = "coil", Minutes = 5, Source = "invented",
                Number = new() { Unit = "ohm", Low = 0, High = 1000, Source = "invented", Open = true },
                Likelihood = new()
                {
                    Aspect = "coil.winding", Model = LikelihoodModel.Density, Fresh = 0.02, Source = "invented", Reference = "absolute", Outlier = 0.02,
                    Densities = new()
                    {
                        ["sound"] = new() { Median = 100, Spread = 0.1 }, ["open"] = new() { Median = 400, Spread = 0.5, Open = 0.9 }, ["open-hot"] = new() { Median = 105, Spread = 0.15, Open = 0.01 },
                    },
                },
            },
        ],
        Remedies =
        [
            new() { Id = "new-coil", Revision = 1, Name = "new coil", Part = "coil", Replaces = true, NewPartBad = 0.03, Minutes = 20, Parts = 60, Source = "invented" },
            new()
            {
                Id = "clean-plug", Revision = 1, Name = "clean the plug", Part = "plug", Minutes = 8, Parts = 0, Source = "invented",
                Cures = [new() { Aspect = "deposit", NotCured = 0.1 }, new() { Aspect = "wetness", Conditions = ["wet"], NotCured = 0.05 }],
            },
            new() { Id = "mend-wire", Revision = 1, Name = "mend the wire", Part = "stop", Minutes = 15, Parts = 2, Source = "invented", Cures = [new() { Aspect = "wire", NotCured = 0.1 }] },
        ],
        Complaints =
        [
            new()
            {
                Id = "no-start", Name = "does not start", Quantity = "firing", Source = "invented", Healthy = ["all"], SystemTest = "runs", Good = ["well"],
                SetUp = new() { ["heat"] = "cold" },
                Given = new() { ["all"] = 0.01, ["one-dead"] = 0.4, ["more-dead"] = 0.8, ["none"] = 0.95 },
            },
        ],
        CommonCauses =
        [
            new() { Id = "damp", Name = "damp", Prior = 0.2, Source = "invented", Likelier = [Likelier("stop.wire", 4, "shorted"), Likelier("plug.deposit", 1.4, "oily")] },
            new() { Id = "age", Name = "age", Prior = 0.3, Source = "invented", Together = true, Likelier = [Likelier("plug.wear", 3, "worn")] },
        ],
        Intake =
        [
            new()
            {
                Id = "stood", Ask = "?", Source = "invented", Answers = Options("dry", "wet", "unknown"), Usually = new() { ["dry"] = 0.7, ["wet"] = 0.1, ["unknown"] = 0.2 },
                Tells =
                [
                    new() { CommonCause = "damp", Source = "invented", Given = new() { ["yes"] = new() { ["dry"] = 0.1, ["wet"] = 0.7, ["unknown"] = 0.2 } } },
                    new() { Quantity = "stopped", Source = "invented", Given = new() { ["yes"] = new() { ["dry"] = 0.5, ["wet"] = 0.4, ["unknown"] = 0.1 } } },
                ],
            },
            new()
            {
                Id = "done", Ask = "?", Several = true, Source = "invented", Answers = Options("nothing", "plug"), Usually = new() { ["nothing"] = 0.6, ["plug"] = 0.4 },
                Tells =
                [
                    new() { CommonCause = "damp", Source = "invented", Given = new() { ["yes"] = new() { ["nothing"] = 0.5, ["plug"] = 0.5 } } },
                    new() { CommonCause = "age", Source = "invented", Given = new() { ["yes"] = new() { ["nothing"] = 0.9, ["plug"] = 0.1 } } },
                ],
            },
        ],
        Layouts = [Layout],
        Costs =
        [
            new() { Name = "rate-per-hour", Value = 60, Unit = "units/h", Source = "invented" },
            new() { Name = "same-cluster", Value = 0.5, Unit = "share", Source = "invented" },
            new() { Name = "refer-minutes", Value = 240, Unit = "min", Source = "invented" },
        ],
        Results =
        [
            new() { Name = "noticed", Value = 0.6, Unit = "chance", Source = "invented" },
            new() { Name = "hoped", Value = 0.2, Unit = "chance", Source = "invented" },
        ],
    };

    private static Likelier Likelier(string aspect, double times, string condition) => new() { Aspect = aspect, Times = times, Conditions = new([condition]), Source = "invented" };

    private static Option[] Options(params string[] ids) => [.. ids.Select(id => new Option { Id = id, Name = id })];

    private static PartKind Part(string id, params Aspect[] aspects) => new() { Id = id, Name = id, Path = PartPath.Spark, Aspects = aspects };

    private static Aspect Aspect(string id, params Condition[] conditions) => new() { Id = id, Name = id, Conditions = conditions };

    private static Condition Fault(string id, double prior, params (string Quantity, string Level)[] effects) =>
        new() { Id = id, Name = id, Prior = prior, Source = "invented", Effects = effects.ToDictionary(e => e.Quantity, e => e.Level) };

    private static Quantity Quantity(string id, QuantityScope per, string[] levels, Combination combine, params QuantityInput[] inputs) =>
        new() { Id = id, Name = id, Per = per, Levels = levels, Combine = combine, Inputs = inputs };

    private static QuantityInput Input(string quantity, params (string From, string To)[] map) =>
        new() { Quantity = quantity, Map = map.ToDictionary(m => m.From, m => m.To) };

    private static SetUpKey Key(string id, QuantityScope per, string standard, params SetUpValue[] values) =>
        new() { Id = id, Name = id, Per = per, Default = standard, Values = values };

    private static SetUpValue Value(string id) => new() { Id = id, Name = id };

    private static Check Check(string id, string at, string? quantity, (string Choice, double[] PerLevel)[] rows, string? aspect = null)
    {
        var levels = quantity is null ? ["sound", "oily"] : Knowledgeless(quantity);
        return new()
        {
            Id = id,
            Revision = 1,
            Name = id,
            Ask = "?",
            At = at,
            Minutes = 3,
            Source = "invented",
            Choices = [.. rows.Select(r => new Option { Id = r.Choice, Name = r.Choice })],
            Likelihood = new()
            {
                Quantity = quantity,
                Aspect = aspect,
                Model = LikelihoodModel.Table,
                Fresh = 0.02,
                Source = "invented",
                Given = levels.Index().ToDictionary(l => l.Item, l => rows.ToDictionary(r => r.Choice, r => r.PerLevel[l.Index])),
            },
        };
    }

    private static string[] Knowledgeless(string quantity) => quantity switch
    {
        "kv" => ["strong", "weak", "none"],
        _ => ["all", "one-dead", "more-dead", "none"],
    };
}
