using Undercowl.Diagnosis.Tests.Fixtures;
using Xunit;

namespace Undercowl.Diagnosis.Tests;

/// <summary>One workbench serves many jobs at once, as a server or a test run does: what it keeps must not depend on who comes first.</summary>
public sealed class ThreadsTests
{
    [Fact]
    public void Jobs_opened_at_once_on_a_fresh_workbench_all_believe_the_same()
    {
        var job = Shop.Story("cut-down-2-cdi", "no-start").FindAll("spark-to-ground", "never", [1, 2]).Job;
        for (var round = 0; round < 20; round++)
        {
            var fresh = new Workbench(Shop.Knowledge, Shop.Workbench.KnowledgeHash);
            var answers = new string[16];
            using var gate = new Barrier(answers.Length);
            Thread[] threads =
            [
                .. answers.Select((_, i) => new Thread(() =>
                {
                    gate.SignalAndWait();
                    try
                    {
                        answers[i] = string.Join(' ', fresh.Open(job).BeliefNow().Causes.Select(c => $"{c.Cause} {c.Now:R}"));
                    }
                    catch (Exception e)
                    {
                        answers[i] = e.ToString();
                    }
                })),
            ];
            Array.ForEach(threads, t => t.Start());
            Array.ForEach(threads, t => t.Join());
            Assert.Single(answers.Distinct());
            Assert.Contains("battery@side:boat", answers[0], StringComparison.Ordinal);
        }
    }
}
