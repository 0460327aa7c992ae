using System.Diagnostics;
using Undercowl.Planning.Tests.Twin;

namespace Undercowl.Planning.Tests;

/// <summary>How much a ranking does, and what it does when it may not.</summary>
public class WorkTests(ITestOutputHelper output)
{
    /// <summary>Invented, at the size of real use: single and double faults, most actions for one component, checks of 2 to 5 outcomes.</summary>
    private static Case Large(int seed, int hypotheses, int components, int actions, int checks)
    {
        var random = new Random(seed);
        return new Case
        {
            Weights = [.. RandomCases.Many(random, hypotheses, 0, 1).Select(x => Math.Pow(x, 25) + 1e-5)],
            Broken =
            [
                .. Enumerable.Range(0, hypotheses).Select(h =>
                {
                    var broken = new bool[components];
                    broken[h % components] = true;
                    if (h >= components) broken[random.Next(components)] = true;
                    return broken;
                }),
            ],
            ActionCost = RandomCases.Many(random, actions, 5, 120),
            Success =
            [
                .. Enumerable.Range(0, actions).Select(a =>
                {
                    var success = new double[components];
                    success[a % components] = RandomCases.Between(random, 0.6, 1);
                    if (random.Next(4) == 0) success[random.Next(components)] = RandomCases.Between(random, 0.2, 1);
                    return success;
                }),
            ],
            ActionCluster = [.. Enumerable.Range(0, actions).Select(_ => random.Next(-4, 6)).Select(g => Math.Max(-1, g))],
            CheckCost = RandomCases.Many(random, checks, 1, 15),
            Rows =
            [
                .. Enumerable.Range(0, checks).Select(_ =>
                {
                    int outcomes = random.Next(2, 6);
                    return Enumerable.Range(0, hypotheses).Select(_ =>
                    {
                        double[] row = [.. RandomCases.Many(random, outcomes, 0, 1).Select(x => Math.Pow(x, 8) + 1e-3)];
                        double sum = row.Sum();
                        return row.Select(x => x / sum).ToArray();
                    }).ToArray();
                }),
            ],
            CheckCluster = [.. Enumerable.Range(0, checks).Select(_ => random.Next(-4, 6)).Select(g => Math.Max(-1, g))],
            Clusters = new ClusterTable
            {
                OpenCost = RandomCases.Many(random, 6, 0, 20),
                CloseCost = RandomCases.Many(random, 6, 0, 10),
                IsOpen = new bool[6],
                TestInside = [true, true, true, true, true, false],
            },
            SystemTest = 2,
            Refer = 1500,
        };
    }

    [Fact]
    public void A_ranking_of_real_size_stays_within_its_work()
    {
        (int, int, int, int)[] sizes = [(300, 60, 60, 60), (400, 100, 100, 100), (500, 150, 150, 150)];
        foreach (var (hypotheses, components, actions, checks) in sizes)
        {
            TroubleshootingProblem problem = Large(1, hypotheses, components, actions, checks).Build();
            var planner = new Planner();
            Ranking ranking = planner.Rank(problem);
            double best = double.PositiveInfinity;
            for (int i = 0; i < 12; i++)
            {
                long start = Stopwatch.GetTimestamp();
                planner.Rank(problem);
                best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            }

            output.WriteLine(FormattableString.Invariant(
                $"{hypotheses} hypotheses, {actions} actions, {checks} checks: {best:F1} ms, work {ranking.Work}, first {ranking.First.Step} at {ranking.First.ExpectedCostToFinish:F1}, acting {ranking.ExpectedCostOfActing:F1}"));
            Assert.Empty(ranking.NotConsidered);
            Assert.Equal(actions + checks + 1, ranking.Proposals.Count);
            // Recorded: guards against work that grows unnoticed. Time is not asserted: machines differ.
            Assert.InRange(ranking.Work, 1, 12_000_000);
        }
    }

    [Fact]
    public void Work_does_not_depend_on_the_run_nor_memory_on_the_steps()
    {
        TroubleshootingProblem problem = Large(2, 300, 60, 60, 60).Build();
        TroubleshootingProblem unchecked_ = new(
            problem.Hypotheses, problem.Actions, CheckTable.None, problem.Clusters, problem.SystemTestCost, problem.ReferCost);
        var planner = new Planner();
        Assert.Equal(planner.Rank(problem).Work, planner.Rank(problem).Work);

        long without = Allocated(() => planner.Rank(unchecked_));
        long with = Allocated(() => planner.Rank(problem));
        output.WriteLine($"allocated {without} bytes without checks, {with} with 60");
        // A proposal for each check, a few arrays for all and the table once more, outcome by outcome: nothing for each step of some 200 outcomes.
        Assert.InRange(with - without, 0, 60_000 + sizeof(double) * problem.Checks.OutcomeProbability.Length);
    }

    [Fact]
    public void Looking_further_spends_what_it_may_and_always_gives_the_same_ranking()
    {
        TroubleshootingProblem problem = Large(4, 500, 150, 150, 150).Build();
        long near = new Planner().Rank(problem).Work;
        long Spent(long allowed) => new Planner(new PlannerOptions { LookAhead = allowed }).Rank(problem).Work - near;

        long least = Spent(1), more = Spent(10 * least);
        output.WriteLine($"one look {near}, the first look further {least}, ten times as much allowed {more}");
        // Recorded: the first look further is always ended, whatever is allowed.
        Assert.InRange(least, 1, 10_000_000);
        Assert.InRange(more, least + 1, 11 * least);

        var planner = new Planner(new PlannerOptions { LookAhead = least });
        Ranking one = planner.Rank(problem), two = planner.Rank(problem);
        Assert.Equal(one.Proposals, two.Proposals);
        Assert.Equal(one.Proposals.Count, one.Proposals.Select(p => p.Step).Distinct().Count());
        Assert.Equal(new Planner().Rank(problem).Proposals.Count, one.Proposals.Count);
    }

    [Fact]
    public void What_the_budget_leaves_out_is_named()
    {
        TroubleshootingProblem problem = Large(3, 300, 60, 60, 60).Build();
        Ranking all = new Planner().Rank(problem);
        Ranking half = new Planner(new PlannerOptions { WorkBudget = all.Work / 2 }).Rank(problem);
        Ranking none = new Planner(new PlannerOptions { WorkBudget = 0 }).Rank(problem);

        Assert.Equal(all.Proposals.Count, half.Proposals.Count + half.NotConsidered.Count);
        Assert.NotEmpty(half.NotConsidered);
        Assert.InRange(half.Work, all.Work / 2, all.Work * 3 / 4);
        Assert.Equal(2, none.Proposals.Count);
        Assert.Equal(all.Proposals.Count - 2, none.NotConsidered.Count);
        Assert.True(none.First.ExpectedCostToFinish >= all.ExpectedCostOfActing);
    }

    private static long Allocated(Action action)
    {
        action();
        long before = GC.GetAllocatedBytesForCurrentThread();
        action();
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }
}
