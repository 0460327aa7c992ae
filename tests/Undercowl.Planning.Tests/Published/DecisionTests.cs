using Undercowl.Planning.Tests.Twin;

namespace Undercowl.Planning.Tests.Published;

/// <summary>Problems that end in a decision: naming the fault, telling whether a system works, taking a payoff or leaving it.</summary>
public class DecisionTests
{
    private static readonly PlannerOptions Further = new() { LookAhead = 1_000_000 };

    private static readonly bool[] Faulty = [true];

    private static readonly double[] Passes = [1, 0], Fails = [0, 1];

    /// <summary>
    /// Test sequencing, after K. R. Pattipati and M. G. Alexandridis, "Application of heuristic search and information theory to sequential fault
    /// diagnosis", IEEE Trans. SMC 20 (1990): the example of six states (the first is sound) and five tests of unit cost. The two costs are worked out here.
    /// </summary>
    private static Case Sequencing()
    {
        string[] signatures = ["00000", "01001", "00110", "10011", "11000", "11110"];
        return new Case
        {
            Weights = [0.70, 0.01, 0.02, 0.10, 0.05, 0.12],
            Broken = [.. signatures.Select(_ => Faulty)],
            CheckCost = [1, 1, 1, 1, 1],
            Rows = [.. Enumerable.Range(0, 5).Select(t => signatures.Select(s => s[t] == '1' ? Fails : Passes).ToArray())],
            Decisions = [.. Enumerable.Range(0, 6).Select(d => Enumerable.Range(0, 6).Select(h => d == h ? 0.0 : 1000).ToArray())],
            Refer = 1000,
        };
    }

    [Fact]
    public void Test_sequencing_costs_2_18_where_myopic_information_gain_pays_2_86()
    {
        TroubleshootingProblem problem = Sequencing().Build();
        Near.Equal(2.18, Exhaustive.Optimum(Worlds.Start(problem), checks: true));
        Near.Equal(2.86, Myopic(Worlds.Start(problem)));

        Ranking ranking = new Planner(Further).Rank(problem);
        Near.Equal(2.18, ranking.First.ExpectedCostToFinish);
        Assert.Equal(PlanStep.Check(1), ranking.First.Step);
        Near.Equal(2.18, Replanning.Cost(Worlds.Start(problem), Further));
    }

    [Fact]
    public void A_series_system_is_tested_by_cost_over_chance_of_failing()
    {
        // L. G. Mitten, "An analytic solution to the least cost testing sequence problem" (1960): the order of increasing cost over
        // chance of failing. Own numbers: ratios 40 30 20 40; 1 + .95*9 + .665*4 + .5985*20 = 24.18 with the third first.
        double[] cost = [4, 9, 1, 20], fails = [0.1, 0.3, 0.05, 0.5];
        int[][] states = [.. Enumerable.Range(0, 16).Select(s => Enumerable.Range(0, 4).Select(c => s >> c & 1).ToArray())];
        TroubleshootingProblem problem = new Case
        {
            Weights = [.. states.Select(s => Enumerable.Range(0, 4).Aggregate(1.0, (p, c) => p * (s[c] == 1 ? fails[c] : 1 - fails[c])))],
            Broken = [.. states.Select(_ => Faulty)],
            CheckCost = cost,
            Rows = [.. Enumerable.Range(0, 4).Select(c => states.Select(s => s[c] == 1 ? Fails : Passes).ToArray())],
            Decisions = [[.. states.Select(s => s.Sum() == 0 ? 0.0 : 1e4)], [.. states.Select(s => s.Sum() > 0 ? 0.0 : 1e4)]],
            Refer = 1e4,
        }.Build();
        double expected = 1 + 0.95 * 9 + 0.95 * 0.7 * 4 + 0.95 * 0.7 * 0.9 * 20;
        Near.Equal(24.18, expected);
        Ranking ranking = new Planner(Further).Rank(problem);
        Near.Equal(expected, ranking.First.ExpectedCostToFinish);
        Assert.Equal(PlanStep.Check(2), ranking.First.Step);
        Near.Equal(expected, Replanning.Cost(Worlds.Start(problem), Further));
    }

    [Fact]
    public void The_oil_wildcatter_tests_for_10_and_expects_22_5()
    {
        // After H. Raiffa, Decision Analysis (1968), as it is told in public copies: dry, wet, soaking .5 .3 .2; drilling pays -70, 50, 200; the seismic test costs 10.
        // Without the test drilling pays 20; with it .41*0 + .35*32.857 + .24*87.5 - 10 = 22.5.
        TroubleshootingProblem problem = new Case
        {
            Weights = [0.5, 0.3, 0.2],
            Broken = [[true], [true], [true]],
            CheckCost = [10],
            Rows = [[[0.6, 0.3, 0.1], [0.3, 0.4, 0.3], [0.1, 0.4, 0.5]]],
            Decisions = [[70, -50, -200]],
            Refer = 0,
        }.Build();
        foreach (PlannerOptions options in new[] { new PlannerOptions(), Further })
        {
            Ranking ranking = new Planner(options).Rank(problem);
            Near.Equal(-20, ranking.ExpectedCostOfActing);
            Near.Equal(-22.5, ranking.First.ExpectedCostToFinish);
            Assert.Equal(PlanStep.Check(0), ranking.First.Step);
            Near.Equal(-20, ranking.Proposals.Single(p => p.Step == PlanStep.Decide(0)).ExpectedCostToFinish);
        }

        Near.Equal(-22.5, Replanning.Cost(Worlds.Start(problem)));
        Assert.Equal([PlanStep.Decide(0)], new Planner().PlanRepairs(problem).Steps);
    }

    [Fact]
    public void Where_decisions_pay_several_checks_may_follow_one_another()
    {
        // The wildcatter with three tests of the same worth that err by themselves: two may agree before one drills.
        double[][] rows = [[0.6, 0.3, 0.1], [0.3, 0.4, 0.3], [0.1, 0.4, 0.5]];
        TroubleshootingProblem problem = new Case
        {
            Weights = [0.5, 0.3, 0.2],
            Broken = [Faulty, Faulty, Faulty],
            CheckCost = [2, 2.5, 3],
            Rows = [rows, rows, rows],
            Decisions = [[70, -50, -200]],
            Refer = 0,
        }.Build();
        double optimum = Exhaustive.Optimum(Worlds.Start(problem), checks: true);
        Near.Equal(optimum, new Planner(Further).Rank(problem).First.ExpectedCostToFinish);
        Near.Equal(optimum, Replanning.Cost(Worlds.Start(problem), Further));
        Assert.True(new Planner().Rank(problem).First.ExpectedCostToFinish > optimum + 0.5, "one look is enough here");
    }

    /// <summary>What it costs to ask at each point what tells most about the state, until it is known.</summary>
    private static double Myopic(Worlds state)
    {
        if (state.All.Length <= 1) return 0;
        int best = Enumerable.Range(0, state.Problem.Checks.Cost.Length).Where(state.MayAsk).MinBy(k => state.Ask(k).Outcomes.Sum(Entropy));
        (double cost, Worlds[] outcomes) = state.Ask(best);
        return cost + outcomes.Sum(Myopic);
    }

    /// <summary>Entropy of the state, in bits, times the weight.</summary>
    private static double Entropy(Worlds state)
    {
        double total = state.Weight;
        return -state.All.Sum(w => w.Weight * Math.Log2(w.Weight / total));
    }
}
