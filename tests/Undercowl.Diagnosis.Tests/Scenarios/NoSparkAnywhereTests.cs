using Undercowl.Diagnosis.Tests.Fixtures;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Scenarios;

/// <summary>No cylinder has spark, and with the stop wire off every cylinder has: the stop circuit holds it.</summary>
public sealed class NoSparkAnywhereTests
{
    private static readonly string[] Helm = ["key-switch@side:boat.run-contact=*", "lanyard-switch@side:boat.*", "boat-harness@side:boat.stop-wire=*", "main-plug@engine.stop-pin=*"];

    private static readonly string[] Engine = ["engine-harness@side:engine.stop-wire=*"];

    [Theory]
    [InlineData("two-stroke-3-cdi")]
    [InlineData("two-stroke-6-banks")]
    public void No_spark_on_any_cylinder_asks_at_once_for_the_lanyard_and_the_stop_wire_off(string layout)
    {
        var story = Shop.Story(layout, "no-start");
        story.FindAll("spark-to-ground", "never", story.Cylinders);
        story.ProposesFirst("spark-stop-wire-off", "lanyard-clip").Proposes(2, p => p.Id == "spark-stop-wire-off", "the stop wire off");
        story.Find("cranking-by-ear", "brisk").ProposesFirst("spark-stop-wire-off", "spark-harness-apart", "lanyard-clip");
    }

    [Theory]
    [InlineData("two-stroke-3-cdi")]
    [InlineData("two-stroke-6-banks")]
    public void Spark_with_the_stop_wire_off_means_the_stop_circuit_and_next_helm_and_engine_are_taken_apart(string layout)
    {
        var story = Dead(layout);
        Verdict.Is(story, [.. Helm, .. Engine]);
        story.ProposesFirst("lanyard-clip", "spark-harness-apart").Find("lanyard-clip", "home").ProposesFirst("spark-harness-apart");
    }

    [Theory]
    [InlineData("two-stroke-3-cdi")]
    [InlineData("two-stroke-6-banks")]
    public void Spark_with_the_harness_plug_apart_puts_it_on_the_helm_and_none_on_the_engine(string layout)
    {
        var helm = Dead(layout).FindAll("spark-harness-apart", "always", [1, 2]);
        Verdict.Is(helm, Helm);
        helm.ProposesFirst("lanyard-clip", "lanyard-switch-test", "key-switch-run", "main-plug-stop-pin");

        var engine = Dead(layout).FindAll("spark-harness-apart", "never", [1, 2]);
        Verdict.Is(engine, Engine);
        engine.ProposesFirst("stop-wire-look", "mend-engine-stop-wire");
    }

    [Fact]
    public void On_a_rope_started_magneto_spark_with_the_stop_wire_off_means_the_stop_circuit()
    {
        var story = Shop.Story("rope-1-magneto", "no-start")
            .Find("spark-to-ground", "never")
            .Find("spark-stop-wire-off", "always");
        Verdict.Is(story, "stop-button@engine.*", "lanyard-switch@engine.*", "engine-harness@side:engine.stop-wire=*");
        story.ProposesFirst("lanyard-clip", "lanyard-switch-test", "stop-wire-look");
    }

    private static Story Dead(string layout)
    {
        var story = Shop.Story(layout, "no-start");
        return story
            .FindAll("spark-to-ground", "never", story.Cylinders)
            .FindAll("spark-stop-wire-off", "always", [1, 2]);
    }
}
