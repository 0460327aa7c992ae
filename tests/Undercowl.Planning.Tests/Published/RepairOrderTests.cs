using Undercowl.Planning.Tests.Twin;

namespace Undercowl.Planning.Tests.Published;

/// <summary>Repair without checks: worked examples whose every order can be priced by hand.</summary>
public class RepairOrderTests
{
    /// <summary>
    /// The computer that does not start: faults program .8, virus .15, hardware .05; reboot 1 mends the program, a virus tool 2
    /// mends the virus with .95, reformatting 25 mends either with .99, a new computer 500 mends all.
    /// Source of the exercise: F. V. Jensen and T. D. Nielsen, Bayesian Networks and Decision Graphs, exercises on
    /// troubleshooting.
    /// </summary>
    private static Case Computer => new()
    {
        Weights = [0.8, 0.15, 0.05],
        ActionCost = [1, 2, 25, 500],
        Success = [[1, 0, 0], [0, 0.95, 0], [0.99, 0.99, 0], [1, 1, 1]],
    };

    [Fact]
    public void The_computer_that_does_not_start_costs_27_875()
    {
        TroubleshootingProblem problem = Computer.Build();
        RepairPlan plan = new Planner().PlanRepairs(problem);

        // Derived: 1 + .2*2 + .0575*25 + .050075*500.
        Near.Equal(27.875, plan.ExpectedCost);
        Assert.Equal([0, 1, 2, 3], Actions(plan));
        Near.Equal(27.875, Exhaustive.Orders(4).Min(order => Exhaustive.Order(problem, order)));
        Assert.Equal(24, Exhaustive.Orders(4).Count());
    }

    [Theory]
    [InlineData(27.875, 0, 1, 2, 3)]
    [InlineData(29.3325, 1, 0, 2, 3)] // 2 + .8575*1 + .0575*25 + .050075*500
    [InlineData(30.15, 0, 1, 3, 2)] // 1 + .2*2 + .0575*500
    [InlineData(31.1405, 0, 2, 1, 3)] // 1 + .2*25 + .0515*2 + .050075*500
    [InlineData(101, 0, 3, 1, 2)] // 1 + .2*500
    [InlineData(500, 3, 0, 1, 2)]
    public void Other_orders_for_that_computer_cost_what_the_sums_say(double expected, params int[] order)
    {
        // Derived, the working beside each. It holds the twin to the book's model, not the planner.
        Near.Equal(expected, Exhaustive.Order(Computer.Build(), order));
    }

    [Fact]
    public void Single_faults_are_mended_by_probability_per_cost()
    {
        // Kadane and Simon 1977: decreasing p/c, here .1 .075 .05 .03. Derived: 1 + .9*4 + .6*9 + .15*5 = 10.75.
        TroubleshootingProblem problem = Case.OneActionEach([0.45, 0.30, 0.15, 0.10], [9, 4, 5, 1]).Build();
        RepairPlan plan = new Planner().PlanRepairs(problem);
        Near.Equal(10.75, plan.ExpectedCost);
        Assert.Equal([3, 1, 0, 2], Actions(plan));
        Near.Equal(10.85, Exhaustive.Order(problem, 1, 3, 0, 2)); // 4 + .7*1 + .6*9 + .15*5
        Near.Equal(14.35, Exhaustive.Orders(4).Max(order => Exhaustive.Order(problem, order)));
    }

    [Fact]
    public void The_job_is_referred_where_going_on_costs_more()
    {
        // Derived: the prefixes of the p/c order cost 25, 19.5, 16.05, 15.1, 16.35 with refer at 25:
        // after three actions 2 + .7*4 + .45*9 + .25*25 = 15.1.
        Case case_ = Case.OneActionEach([0.30, 0.25, 0.20, 0.25], [2, 4, 9, 30]) with { Refer = 25 };
        RepairPlan plan = new Planner().PlanRepairs(case_.Build());
        Near.Equal(15.1, plan.ExpectedCost);
        Assert.Equal([0, 1, 2], Actions(plan));
        Assert.Equal(PlanStep.Refer, plan.Steps[^1]);
        Near.Equal(16.35, Exhaustive.Order(case_.Build(), 0, 1, 2, 3));
    }

    [Fact]
    public void What_is_paid_only_on_finding_the_fault_does_not_change_the_order()
    {
        // Heckerman, Breese and Rommelse 1995: order by p over inspection cost.
        // Derived: 1 + .5*2 + .2*4 inspecting, .5*10 + .3*30 + .2*5 = 15 repairing.
        Case case_ = Case.OneActionEach([0.5, 0.3, 0.2], [1, 2, 4]) with { RepairCost = [10, 30, 5] };
        RepairPlan plan = new Planner().PlanRepairs(case_.Build());
        Near.Equal(17.8, plan.ExpectedCost);
        Assert.Equal([0, 1, 2], Actions(plan));
        Near.Equal(21.1, Exhaustive.Orders(3).Max(order => Exhaustive.Order(case_.Build(), order)));
    }

    [Fact]
    public void An_action_that_may_fail_counts_by_its_chance_of_mending()
    {
        // Derived: efficiencies .45/6, .24/3, .2/4 = .075 .08 .05; 3 + .76*6 + .31*4 + .11*30 = 12.10.
        Case case_ = new()
        {
            Weights = [0.5, 0.3, 0.2],
            ActionCost = [6, 3, 4],
            Success = [[0.9, 0, 0], [0, 0.8, 0], [0, 0, 1]],
            Refer = 30,
        };
        RepairPlan plan = new Planner().PlanRepairs(case_.Build());
        Near.Equal(12.10, plan.ExpectedCost);
        Assert.Equal([1, 0, 2], Actions(plan));
        Near.Equal(12.19, Exhaustive.Order(case_.Build(), 0, 1, 2));
        Near.Equal(13.15, Exhaustive.Order(case_.Build(), 2, 0, 1));
    }

    [Fact]
    public void Where_actions_overlap_trying_each_first_beats_the_greedy_order()
    {
        // Derived: greedy begins with action 1 and pays 6 + .15*6 = 6.9; 6 + .25*2 + 0 after action 0 is 6.5, the optimum.
        Case case_ = new()
        {
            Weights = [0.45, 0.15, 0.25, 0.15],
            ActionCost = [6, 6, 2],
            Success = [[1, 1, 0, 1], [1, 1, 1, 0], [0, 0, 1, 0]],
        };
        TroubleshootingProblem problem = case_.Build();
        Near.Equal(6.9, Exhaustive.Order(problem, 1, 0, 2));
        Near.Equal(6.5, Exhaustive.Optimum(Worlds.Start(problem), checks: true));
        Near.Equal(6.5, new Planner().PlanRepairs(problem).ExpectedCost);
    }

    [Fact]
    public void A_tie_between_overlapping_actions_does_not_cost_a_fifth()
    {
        // Derived: 1 + 7/12*1 + 1/6*3 = 25/12; the greedy order that breaks its first tie the other way pays 2.5.
        Case case_ = new()
        {
            Weights = [1 / 6d, 1 / 4d, 1 / 6d, 5 / 12d],
            ActionCost = [2, 3, 1, 1, 1],
            Success = [[0, 1, 1, 1], [1, 1, 0, 0], [0, 1, 1, 0], [0, 0, 0, 1], [0, 1, 1, 0]],
        };
        TroubleshootingProblem problem = case_.Build();
        Near.Equal(2.5, Exhaustive.Order(problem, 0, 1, 2, 3, 4));
        Near.Equal(25 / 12d, Exhaustive.Optimum(Worlds.Start(problem), checks: true));
        Near.Equal(25 / 12d, new Planner().PlanRepairs(problem).ExpectedCost);
    }

    private static IEnumerable<int> Actions(RepairPlan plan) =>
        plan.Steps.Where(s => s.Kind == StepKind.Action).Select(s => s.Index);
}
