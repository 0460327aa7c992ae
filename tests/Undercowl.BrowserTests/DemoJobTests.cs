using System.Globalization;
using System.Text.Json;
using Undercowl.BrowserTests.Fixtures;
using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Working;

namespace Undercowl.BrowserTests;

/// <summary>The demonstration job from its link to sign-off in a real browser.</summary>
[Collection(OneApp.Name)]
public sealed class DemoJobTests(App app)
{
    /// <summary>Sums are made in the same order inside and outside the browser, but not by the same instructions.</summary>
    private const double Same = 1e-9;

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
                AssertSame(JsonDocument.Parse(native).RootElement, JsonDocument.Parse(text).RootElement, "");
                compared++;
            }
        });
        var ended = Undercowl.Jobs.Projection.Of(await visit.Job()).Ending;
        Assert.Equal("proven", Outcomes.Text(ended!.Body.Outcome));
        Assert.True(steps > 5);
        Assert.True(keyboard || compared == steps);
    }

    /// <summary>Every member alike, numbers to 1e-9; only what the caution of a step says of having been read may differ, which no answer waits for.</summary>
    private static void AssertSame(JsonElement native, JsonElement browser, string at)
    {
        Assert.Equal(native.ValueKind, browser.ValueKind);
        switch (native.ValueKind)
        {
            case JsonValueKind.Object:
                var mine = native.EnumerateObject().Where(p => Compared(at, p.Name)).ToDictionary(p => p.Name, p => p.Value);
                var theirs = browser.EnumerateObject().Where(p => Compared(at, p.Name)).ToDictionary(p => p.Name, p => p.Value);
                Assert.Equal(mine.Keys.Order(StringComparer.Ordinal), theirs.Keys.Order(StringComparer.Ordinal));
                foreach (var (name, value) in mine)
                {
                    AssertSame(value, theirs[name], $"{at}/{name}");
                }

                break;
            case JsonValueKind.Array:
                Assert.Equal(native.GetArrayLength(), browser.GetArrayLength());
                foreach (var (i, value) in native.EnumerateArray().Index())
                {
                    AssertSame(value, browser[i], $"{at}/{i.ToString(CultureInfo.InvariantCulture)}");
                }

                break;
            case JsonValueKind.Number:
                Assert.True(Math.Abs(native.GetDouble() - browser.GetDouble()) <= Same * Math.Max(1, Math.Abs(native.GetDouble())), $"{at}: {native} and {browser}");
                break;
            default:
                Assert.True(native.ToString() == browser.ToString(), $"{at}: \"{native}\" and \"{browser}\"");
                break;
        }
    }

    private static bool Compared(string at, string name) => name is not "acknowledged" && (at.Length > 0 || name is not "entries");
}
