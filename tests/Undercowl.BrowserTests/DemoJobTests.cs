using System.Text.Json;
using Undercowl.BrowserTests.Fixtures;
using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Working;

namespace Undercowl.BrowserTests;

/// <summary>The demonstration job from its link to sign-off in a real browser.</summary>
[Collection(OneApp.Name)]
public sealed class DemoJobTests(App app)
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task The_demonstration_job_is_done_to_sign_off_by_touch_and_by_keyboard_alone_with_the_answers_of_the_terminal(bool keyboard)
    {
        await using var visit = await app.Visit();
        await visit.Go("/");
        await visit.Link("Try the demonstration job").ClickAsync();
        var compared = 0;
        var steps = await new Technician(visit, keyboard).Work(async answer =>
        {
            if (!keyboard)
            {
                var job = await visit.Job();
                var (_, text) = await visit.Answer();
                var native = JsonSerializer.Serialize(Bench.Native.Open(job).Answer(JobAnswer.Proposals, _ => false), AnswerJson.Default.JobAnswer);
                SameDocument.Assert(JsonDocument.Parse(native).RootElement, JsonDocument.Parse(text).RootElement);
                compared++;
            }
        });
        var ended = Undercowl.Jobs.Projection.Of(await visit.Job()).Ending;
        Assert.Equal("proven", Outcomes.Text(ended!.Body.Outcome));
        Assert.True(steps > 5);
        Assert.True(keyboard || compared == steps);
    }
}
