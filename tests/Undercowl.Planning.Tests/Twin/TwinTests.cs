namespace Undercowl.Planning.Tests.Twin;

/// <summary>The planner against its slow twin on small random problems: its sums are exact and it never claims the impossible.</summary>
public class TwinTests(ITestOutputHelper output)
{
    [Fact]
    public void Under_the_classical_assumptions_the_repair_plan_is_optimal()
    {
        for (int seed = 0; seed < 400; seed++)
        {
            TroubleshootingProblem problem = (RandomCases.Classical(seed, 0) with { RepairCost = null }).Build();
            double total = problem.Hypotheses.Weights.Sum();
            double optimum = Exhaustive.Optimum(Worlds.Start(problem), checks: false) / total;
            Near.Equal(optimum, new Planner().PlanRepairs(problem).ExpectedCost);
        }
    }

    [Fact]
    public void Under_the_classical_assumptions_every_step_is_priced_as_its_best_follow_up()
    {
        for (int seed = 0; seed < 200; seed++)
        {
            TroubleshootingProblem problem = (RandomCases.Classical(seed, 2) with { RepairCost = null }).Build();
            double total = problem.Hypotheses.Weights.Sum();
            foreach (Proposal proposal in new Planner().Rank(problem).Proposals)
            {
                double best = Exhaustive.OptimumAfter(Worlds.Start(problem), proposal.Step) / total;
                Near.Equal(best, proposal.ExpectedCostToFinish);
            }
        }
    }

    [Fact]
    public void A_repair_plan_carried_out_costs_what_it_says()
    {
        int shared = 0, deferred = 0;
        for (int seed = 0; seed < 1000; seed++)
        {
            TroubleshootingProblem problem = RandomCases.Tangled(seed, 0).Build();
            RepairPlan plan = new Planner().PlanRepairs(problem);
            double total = problem.Hypotheses.Weights.Sum();
            Near.Equal(Exhaustive.Follow(Worlds.Start(problem), plan.Steps) / total, plan.ExpectedCost);
            if (plan.Steps.Zip(plan.Steps.Skip(1)).Any(p => p.First.Kind == StepKind.Action && p.Second.Kind == StepKind.Action)) shared++;
            if (plan.Steps.Count > 1) deferred++;
        }

        // The cases must hold plans worth the name, and tests shared by several actions.
        Assert.InRange(shared, 50, 1000);
        Assert.InRange(deferred, 400, 1000);
    }

    [Fact]
    public void No_proposal_is_cheaper_than_the_best_that_can_follow_its_step()
    {
        double sum = 0;
        int count = 0;
        for (int seed = 0; seed < 150; seed++)
        {
            TroubleshootingProblem problem = RandomCases.Tangled(seed, 2).Build();
            double total = problem.Hypotheses.Weights.Sum();
            foreach (Proposal proposal in new Planner().Rank(problem).Proposals)
            {
                double best = Exhaustive.OptimumAfter(Worlds.Start(problem), proposal.Step) / total;
                Near.AtLeast(best, proposal.ExpectedCostToFinish);
                if (best == 0) continue;
                sum += proposal.ExpectedCostToFinish / best;
                count++;
            }
        }

        output.WriteLine(FormattableString.Invariant($"mean ratio to the best one-check follow-up: {sum / count:F5}"));
        // Recorded: guards against a greedy order gone bad.
        Assert.InRange(sum / count, 1, 1.01);
    }

    [Fact]
    public void Replanning_after_each_step_comes_close_to_the_optimum_and_never_below()
    {
        foreach (bool tangled in new[] { false, true })
        {
            double ratio = 0, worst = 0, first = 0;
            const int Cases = 80;
            for (int seed = 0; seed < Cases; seed++)
            {
                Case case_ = tangled ? RandomCases.Tangled(seed, 2) : RandomCases.Classical(seed, 2);
                TroubleshootingProblem problem = case_.Build();
                double total = problem.Hypotheses.Weights.Sum();
                double optimum = Exhaustive.Optimum(Worlds.Start(problem), checks: true);
                double replanned = Replanning.Cost(Worlds.Start(problem));
                double claimed = new Planner().Rank(problem).First.ExpectedCostToFinish * total;
                Near.AtLeast(optimum, replanned);
                Near.AtLeast(optimum, claimed);
                ratio += replanned / optimum / Cases;
                first += claimed / optimum / Cases;
                worst = Math.Max(worst, replanned / optimum);
            }

            output.WriteLine(FormattableString.Invariant(
                $"{(tangled ? "tangled" : "classical")}: replanned/optimum mean {ratio:F5}, worst {worst:F4}; claimed/optimum mean {first:F5}"));
            // Recorded: guards against getting worse.
            Assert.InRange(ratio, 1, 1.01);
        }
    }

    [Fact]
    public void Looking_on_to_the_end_is_as_good_as_the_optimum_on_small_problems()
    {
        var further = new PlannerOptions { LookAhead = 2_000_000 };
        foreach (bool tangled in new[] { false, true })
        {
            double ratio = 0, worst = 0;
            const int Cases = 80;
            for (int seed = 0; seed < Cases; seed++)
            {
                Case case_ = tangled ? RandomCases.Tangled(seed, 2) : RandomCases.Classical(seed, 2);
                TroubleshootingProblem problem = case_.Build();
                double optimum = Exhaustive.Optimum(Worlds.Start(problem), checks: true);
                double replanned = Replanning.Cost(Worlds.Start(problem), further);
                Near.AtLeast(optimum, replanned);
                Near.AtLeast(optimum, new Planner(further).Rank(problem).First.ExpectedCostToFinish * problem.Hypotheses.Weights.Sum());
                ratio += replanned / optimum / Cases;
                worst = Math.Max(worst, replanned / optimum);
            }

            output.WriteLine(FormattableString.Invariant($"{(tangled ? "tangled" : "classical")}: replanned/optimum mean {ratio:F5}, worst {worst:F4}"));
            // Recorded: guards against getting worse.
            Assert.InRange(ratio, 1 - Near.Sums, tangled ? 1.001 : 1 + Near.Sums);
            Assert.InRange(worst, 1 - Near.Sums, 1.02);
        }
    }

    [Fact]
    public void Looking_further_finds_the_checks_that_only_tell_together_and_one_look_does_not()
    {
        TroubleshootingProblem problem = Halving();
        double optimum = Exhaustive.Optimum(Worlds.Start(problem), checks: true);
        double near = Replanning.Cost(Worlds.Start(problem));
        double far = Replanning.Cost(Worlds.Start(problem), new PlannerOptions { LookAhead = 100_000 });
        output.WriteLine(FormattableString.Invariant($"optimum {optimum:F3}, one look {near:F3}, looking further {far:F3}"));
        Assert.True(near > 1.15 * optimum);
        Near.Equal(optimum, far);
    }

    /// <summary>Four equally likely faults, dear repairs, and two cheap checks of which each halves them: after one alone one would still refer.</summary>
    private static TroubleshootingProblem Halving()
    {
        const int Faults = 4;
        var broken = new bool[Faults * Faults];
        var success = new double[Faults * Faults];
        var outcomes = new List<double>();
        for (int f = 0; f < Faults; f++) broken[f * Faults + f] = true;
        for (int f = 0; f < Faults; f++) success[f * Faults + f] = 1;
        for (int k = 0; k < 2; k++)
        {
            for (int f = 0; f < Faults; f++) outcomes.AddRange((f >> k & 1) == 0 ? [1.0, 0] : [0, 1.0]);
        }

        return new TroubleshootingProblem(
            new HypothesisTable { Weights = [.. Enumerable.Repeat(1.0 / Faults, Faults)], Components = Faults, Broken = broken },
            new ActionTable { Cost = [.. Enumerable.Repeat(30.0, Faults)], Success = success },
            new CheckTable { Cost = [2, 2], Outcomes = [2, 2], OutcomeProbability = [.. outcomes] },
            ClusterTable.None,
            systemTestCost: 1,
            referCost: 45);
    }
}
