using Undercowl.Diagnosis.Tests.Fixtures;
using Undercowl.Jobs;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Input;

/// <summary>A set-up that an engine cannot be in is refused, whether it is typed alone or with a reading.</summary>
public sealed class SetUpInputTests
{
    [Theory]
    [InlineData("four-stroke-4-inductive", "stop-wire", "off")]
    [InlineData("rope-1-magneto", "booster", "yes")]
    [InlineData("rope-1-magneto", "unit-plug", "off")]
    [InlineData("two-stroke-3-cdi", "known-good-plug@cyl:4", "yes")]
    [InlineData("two-stroke-3-cdi", "known-good-plug@engine", "yes")]
    [InlineData("two-stroke-3-cdi", "stop-wire@cyl:1", "off")]
    public void What_does_not_apply_is_refused_alone_and_with_a_reading(string layout, string key, string value)
    {
        var story = Shop.Story(layout, "no-start");
        var before = story.Job.Count;
        Assert.Throws<DiagnosisException>(() => story.SetUp(key, value));
        Assert.Throws<DiagnosisException>(() => story.Find("tank-level", "enough", null, (key, value)));
        Assert.Equal(before, story.Job.Count);
    }

    [Fact]
    public void The_refusal_names_the_set_ups_that_this_engine_has()
    {
        var refused = Assert.Throws<DiagnosisException>(() => Shop.Story("four-stroke-4-inductive", "no-start").SetUp("stop-wire", "off"));
        Assert.Contains("stop-wire=off does not apply to this engine", refused.Message, StringComparison.Ordinal);
        Assert.Contains("plugs (in, out)", refused.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("stop-wire (", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("two-stroke-3-cdi", "stop-wire", "off")]
    [InlineData("four-stroke-4-inductive", "booster", "yes")]
    [InlineData("four-stroke-4-inductive", "known-good-plug@cyl:4", "yes")]
    [InlineData("rope-1-magneto", "plugs", "out")]
    [InlineData("rope-1-magneto", "heat", "hot")]
    public void What_applies_is_taken(string layout, string key, string value) =>
        Assert.Contains(Shop.Story(layout, "no-start").SetUp(key, value).Job.Entries, e => e.Body is SetUpChange or Occasion);

    [Fact]
    public void Every_set_up_that_a_check_brings_about_can_be_said_of_its_engine()
    {
        var said = 0;
        foreach (var layout in Shop.Knowledge.Layouts.Where(l => !l.TestOnly))
        {
            var complaint = Shop.Knowledge.Complaints.First(c => c.Only.Holds(layout)).Id;
            var story = new Story(Shop.Workbench, layout.Id, complaint);
            foreach (var check in Shop.Knowledge.Checks.Where(c => c.Only.Holds(layout) && (c.At is "engine" or "cyl" || layout.Parts.Any(p => p.Part == c.At))))
            {
                foreach (var (key, value) in check.SetUp.Where(s => Shop.Knowledge.SetUps.First(k => k.Id == s.Key.Split('@')[0]).Default != s.Value))
                {
                    Assert.NotNull(Drafting.SetUp(story.Diagnosis, new Dictionary<string, string> { [key.Replace("@here", "@cyl:1", StringComparison.Ordinal)] = value }));
                    said++;
                }
            }
        }

        Assert.True(said > 50, $"{said} set-ups said");
    }

    [Fact]
    public void What_stands_so_in_a_log_can_be_undone()
    {
        var story = Shop.Story("four-stroke-4-inductive", "no-start").Record(new SetUpChange(new Dictionary<string, string> { ["stop-wire"] = "off" }));
        Assert.Contains(story.Diagnosis.Restore, r => r.Key == "stop-wire");
        Assert.Empty(story.SetUp("stop-wire", "on").Diagnosis.Restore);
    }
}
