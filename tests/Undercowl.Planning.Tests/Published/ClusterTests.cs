using Undercowl.Planning.Tests.Twin;

namespace Undercowl.Planning.Tests.Published;

/// <summary>
/// Cost clusters: two actions behind a cover (opening 4) and two outside. The notion is that of H. Langseth and F. V. Jensen 2003,
/// and of T. J. Ottosen and F. V. Jensen 2011; the numbers are derived here.
/// </summary>
public class ClusterTests
{
    private static Case Covered(bool testInside, double close) =>
        Case.OneActionEach([0.40, 0.20, 0.25, 0.15], [5, 1, 3, 2]) with
        {
            ActionCluster = [0, 0, -1, -1],
            Clusters = new ClusterTable { OpenCost = [4], CloseCost = [close], IsOpen = [false], TestInside = [testInside] },
        };

    [Fact]
    public void Where_one_can_test_with_the_cover_off_it_is_opened_when_the_visit_as_a_whole_is_due()
    {
        // Derived: visit ratio .6/10 = .06, below .0833 and .075 outside. 3 + .75*2 + .6*(4 + 1) + .4*5 = 9.5.
        TroubleshootingProblem problem = Covered(testInside: true, close: 0).Build();
        RepairPlan plan = new Planner().PlanRepairs(problem);
        Near.Equal(9.5, plan.ExpectedCost);
        Assert.Equal([2, 3, 1, 0], Actions(plan));
        Near.Equal(9.5, Exhaustive.Optimum(Worlds.Start(problem), checks: true));

        // Plain p/c, blind to the cover: 5 + .8*3 + .55*5 + .15*2.
        Near.Equal(10.45, Exhaustive.Order(problem, 1, 2, 0, 3));
    }

    [Fact]
    public void Where_the_cover_must_be_on_to_test_one_visit_does_both_actions()
    {
        // Derived: 3 + .75*2 + .6*(4 + 1 + 5 + 2) = 11.7.
        TroubleshootingProblem problem = Covered(testInside: false, close: 2).Build();
        RepairPlan plan = new Planner().PlanRepairs(problem);
        Near.Equal(11.7, plan.ExpectedCost);
        Near.Equal(11.7, Exhaustive.Optimum(Worlds.Start(problem), checks: true));
        Assert.Equal(
            [PlanStep.Action(2), PlanStep.SystemTest, PlanStep.Action(3), PlanStep.SystemTest],
            plan.Steps.Take(4));
        Assert.Equal([0, 1], plan.Steps.Skip(4).Take(2).Select(s => s.Index).Order());
        Assert.Equal(PlanStep.SystemTest, plan.Steps[6]);
    }

    [Fact]
    public void With_the_cover_off_already_what_is_behind_it_comes_first()
    {
        // Derived: ratios .08 .2 .0833 .075; 1 + .8*3 + .55*5 + .15*2 = 6.45.
        Case covered = Covered(testInside: true, close: 0);
        ClusterTable open = new() { OpenCost = [4], CloseCost = [0], IsOpen = [true], TestInside = [true] };
        RepairPlan plan = new Planner().PlanRepairs((covered with { Clusters = open }).Build());
        Near.Equal(6.45, plan.ExpectedCost);
        Assert.Equal([1, 2, 0, 3], Actions(plan));
    }

    [Fact]
    public void Where_every_test_is_dear_two_actions_share_one()
    {
        // Derived: one test for both 1 + 1 + 10 = 12; tested singly 11 + .5*11 = 16.5.
        Case case_ = Case.OneActionEach([0.5, 0.5], [1, 1]) with { SystemTest = 10 };
        RepairPlan plan = new Planner().PlanRepairs(case_.Build());
        Near.Equal(12, plan.ExpectedCost);
        Assert.Equal([PlanStep.Action(0), PlanStep.Action(1), PlanStep.SystemTest], plan.Steps);
    }

    private static IEnumerable<int> Actions(RepairPlan plan) =>
        plan.Steps.Where(s => s.Kind == StepKind.Action).Select(s => s.Index);
}
