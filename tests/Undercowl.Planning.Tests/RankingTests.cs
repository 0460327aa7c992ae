namespace Undercowl.Planning.Tests;

/// <summary>What a ranking holds, in what order, and when its first proposal gives way.</summary>
public class RankingTests
{
    private static Case Two => Case.OneActionEach([0.5, 0.5], [10, 10.4]) with { Refer = 100 };

    [Fact]
    public void The_cheapest_comes_first_and_refer_is_always_there()
    {
        Ranking ranking = new Planner().Rank(Two.Build());
        Assert.Equal([PlanStep.Action(0), PlanStep.Action(1), PlanStep.Refer], ranking.Proposals.Select(p => p.Step));

        // Derived: 10 + .5*10.4; 10.4 + .5*10; refer.
        Near.Equal(15.2, ranking.Proposals[0].ExpectedCostToFinish);
        Near.Equal(15.4, ranking.Proposals[1].ExpectedCostToFinish);
        Near.Equal(100, ranking.Proposals[2].ExpectedCostToFinish);
    }

    [Fact]
    public void Steps_that_cost_the_same_are_ordered_by_kind_and_index()
    {
        Case case_ = Case.OneActionEach([0.3, 0.3, 0.3], [0.1, 0.1, 0.1]) with
        {
            CheckCost = [0],
            Rows = [[[0.5, 0.5], [0.5, 0.5], [0.5, 0.5]]],
        };
        Ranking ranking = new Planner().Rank(case_.Build());
        Assert.Equal(
            [PlanStep.Action(0), PlanStep.Action(1), PlanStep.Action(2), PlanStep.Check(0), PlanStep.Refer],
            ranking.Proposals.Select(p => p.Step));
    }

    [Fact]
    public void The_step_shown_stays_until_another_is_better_by_the_margin()
    {
        Ranking ranking = new Planner().Rank(Two.Build());
        Assert.Equal(PlanStep.Action(1), ranking.Steady(PlanStep.Action(1), 0.3).Step);
        Assert.Equal(PlanStep.Action(0), ranking.Steady(PlanStep.Action(1), 0.1).Step);
        Assert.Equal(PlanStep.Action(0), ranking.Steady(null, 0.3).Step);
        Assert.Equal(PlanStep.Action(0), ranking.Steady(PlanStep.Check(7), 1000).Step);
        Assert.Throws<PlanningException>(() => ranking.Steady(null, -1));
        Assert.Throws<PlanningException>(() => ranking.Steady(null, double.NaN));
    }

    [Fact]
    public void What_is_not_allowed_or_could_mend_nothing_is_not_proposed()
    {
        Case case_ = new()
        {
            Weights = [0.5, 0.5, 0],
            ActionCost = [1, 1, 1, 1],
            Success = [[1, 0, 0], [0, 1, 0], [0, 0, 1], [0, 0, 0]],
            ActionAllowed = [true, false, true, true],
            CheckCost = [0.1, 0.1],
            Rows = [[[1, 0], [0, 1], [0, 1]], [[1, 0], [0, 1], [0, 1]]],
            CheckAllowed = [false, true],
            Refer = 50,
        };
        Ranking ranking = new Planner().Rank(case_.Build());
        Assert.Equal(
            [PlanStep.Check(1), PlanStep.Action(0), PlanStep.Refer],
            ranking.Proposals.Select(p => p.Step));

        // Derived: .1 + .5*1 + .5*50; 1 + .5*50.
        Near.Equal(25.6, ranking.Proposals[0].ExpectedCostToFinish);
        Near.Equal(26, ranking.Proposals[1].ExpectedCostToFinish);
    }

    [Fact]
    public void A_proposal_says_what_it_costs_now_and_how_likely_it_helps()
    {
        Case case_ = new()
        {
            Weights = [3, 1, 4, 2],
            Broken = [[true, false], [false, true], [true, true], [false, false]],
            ActionCost = [5, 7],
            Success = [[0.8, 0], [0, 1]],
            RepairCost = [10, 0],
            ActionCluster = [0, -1],
            Clusters = new ClusterTable { OpenCost = [2], CloseCost = [1], IsOpen = [false], TestInside = [true] },
            SystemTest = 3,
            Refer = 200,
        };
        Ranking ranking = new Planner().Rank(case_.Build());
        Proposal action = ranking.Proposals.Single(p => p.Step == PlanStep.Action(0));
        Proposal test = ranking.Proposals.Single(p => p.Step == PlanStep.SystemTest);
        Proposal refer = ranking.Proposals.Single(p => p.Step == PlanStep.Refer);

        Near.Equal(0.7 * 0.8, action.ProbabilityOfHelp); // derived: component 0 is broken with .3 + .4
        Near.Equal(0.2 + 0.3 * 0.8, action.ProbabilityOfCure); // derived: met already, or component 0 alone
        Near.Equal(0.2, test.ProbabilityOfCure);
        Near.Equal(3, test.CostNow);
        Near.Equal(200, refer.ExpectedCostToFinish);

        // Derived: cover 2 + 1, the action 5, repair .7*10, and the test 3: testing at once, 18 + .56*(7 + 3), beats 15 + 7 + 3.
        Near.Equal(18, action.CostNow);
    }

    [Fact]
    public void A_check_that_finds_the_fault_is_priced_by_what_follows_its_answers()
    {
        // Derived: acting 10 + .5*10.4 = 15.2; told, 2 + .5*10 + .5*10.4 = 12.2; only the second answer changes the next step.
        Case case_ = Two with { CheckCost = [2], Rows = [[[1, 0], [0, 1]]] };
        Proposal check = new Planner().Rank(case_.Build()).First;
        Assert.Equal(PlanStep.Check(0), check.Step);
        Near.Equal(12.2, check.ExpectedCostToFinish);
        Near.Equal(5, check.Information);
        Near.Equal(2, check.CostNow);
        Near.Equal(0.5, check.ProbabilityOfHelp);
    }

    [Fact]
    public void Nothing_to_mend_and_nothing_to_do_are_planned_too()
    {
        Ranking met = new Planner().Rank(new Case { Weights = [1], Broken = [[]], SystemTest = 3, Refer = 50 }.Build());
        Assert.Equal(PlanStep.SystemTest, met.First.Step);
        Near.Equal(3, met.First.ExpectedCostToFinish);

        RepairPlan hopeless = new Planner().PlanRepairs(new Case { Weights = [1], Refer = 50 }.Build());
        Assert.Equal([PlanStep.Refer], hopeless.Steps);
        Near.Equal(50, hopeless.ExpectedCost);

        // One of two broken components cannot be mended: mending the other is money thrown away.
        Case half = new() { Weights = [1], Broken = [[true, true]], ActionCost = [1], Success = [[1, 0]], Refer = 50 };
        Assert.Equal([PlanStep.Refer], new Planner().PlanRepairs(half.Build()).Steps);
    }
}
