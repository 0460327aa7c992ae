using System.Text.Json;
using Microsoft.Playwright;
using Undercowl.Cli.Demonstrating;
using Undercowl.Diagnosis.Answers;

namespace Undercowl.BrowserTests.Fixtures;

/// <summary>
/// Works the demonstration job in the page: does what is put, and reads what the invented engine of demo/demo.json gives. By touch, or
/// with the keyboard alone.
/// </summary>
internal sealed class Technician(Visit visit, bool keyboard = false, bool touch = true)
{
    private const int MostSteps = 40;

    private readonly DemoAnswers _engine = new(JsonSerializer.Deserialize(Repository.Read("demo/demo.json"), DemoJson.Default.DemoScript)!);

    /// <summary>From where the job is to its end; how many steps that took.</summary>
    /// <param name="each">What is to be done when a step stands there.</param>
    /// <param name="most">So many steps and no more; the job then stays open.</param>
    public async Task<int> Work(Func<JobAnswer, Task>? each = null, int? most = null)
    {
        for (var steps = 0; steps < (most ?? MostSteps); steps++)
        {
            await visit.Settled();
            var (answer, _) = await visit.Answer();
            if (answer.Outcome != "open")
            {
                return steps;
            }

            if (each is not null)
            {
                await each(answer);
            }

            await Do(answer.Now ?? throw new InvalidOperationException("Nothing is proposed."));
        }

        return most ?? throw new InvalidOperationException($"The job is not done in {MostSteps} steps.");
    }

    private async Task Do(ProposedStep step)
    {
        var card = visit.Page.Locator("#step").First;
        await Assertions.Expect(card.Locator("h2").First).ToHaveTextAsync(step.Name);
        var read = card.GetByRole(AriaRole.Button, new() { Name = "Read and understood", Exact = true });
        if (await read.CountAsync() > 0)
        {
            await Press(read);
            await read.WaitForAsync(new() { State = WaitForSelectorState.Detached });
        }

        var job = Bench.Native.Open(await visit.Job());
        var reply = _engine.Answer(step, cautions: false, job)!;
        switch (step.Kind)
        {
            case "sign-off":
                await Type(card.GetByLabel("Who signs"), reply["sign ".Length..]);
                await Press(card.GetByRole(AriaRole.Button, new() { Name = "Sign off as proven", Exact = true }));
                await visit.Page.GetByText("Ended: proven").First.WaitForAsync();
                return;
            case "remedy":
                await Choose(card, "Done");
                break;
            case "restore":
                await Choose(card, "All of it is back");
                break;
            case "make-safe":
                await Choose(card, step.Choices.Count > 1 ? "All of it is so" : step.Choices[0].Name);
                break;
            default:
                if (reply == "skip")
                {
                    await Choose(card, "Leave it for now");
                }
                else if (step.Number is { } number)
                {
                    var space = reply.IndexOf(' ', StringComparison.Ordinal);
                    await Type(card.GetByLabel("The reading in"), reply[..space]);
                    if (number.Units.Count > 1)
                    {
                        await card.GetByLabel("Unit").SelectOptionAsync(reply[(space + 1)..]);
                    }

                    await Choose(card, "Record");
                }
                else
                {
                    await Choose(card, step.Choices.First(c => c.Id == reply).Name);
                }

                break;
        }

        // The step of before is gone when the page takes the new answer.
        await visit.Page.WaitForFunctionAsync("async ([id, n]) => (await (await import('/js/store.js')).lines(id)).split('\\n').length > n", new object[] { visit.JobId, job.Projection.Job.Count + 1 });
    }

    private Task Choose(ILocator card, string name) => Press(card.GetByRole(AriaRole.Button, new() { Name = name, Exact = true }).First);

    private async Task Press(ILocator button)
    {
        if (!keyboard)
        {
            await (touch ? button.TapAsync() : button.ClickAsync());
            return;
        }

        await Reach(button);
        await visit.Page.Keyboard.PressAsync("Enter");
    }

    private async Task Type(ILocator field, string text)
    {
        if (keyboard)
        {
            await Reach(field);
        }
        else
        {
            await (touch ? field.TapAsync() : field.ClickAsync());
        }

        await visit.Page.Keyboard.TypeAsync(text);
    }

    /// <summary>Goes there with Tab alone, from where the focus is.</summary>
    private async Task Reach(ILocator wanted)
    {
        await wanted.WaitForAsync();
        for (var presses = 0; presses < 400; presses++)
        {
            if (await wanted.EvaluateAsync<bool>("e => e === document.activeElement"))
            {
                return;
            }

            await visit.Page.Keyboard.PressAsync("Tab");
        }

        throw new InvalidOperationException("The Tab key does not come there.");
    }
}
