namespace Undercowl.Planning.Tests.Bugs;

/// <summary>
/// Behind a system test only the greedy order was tried; plans behind a check could begin with a test and a better
/// order, so a check that tells nothing ranked above the test.
/// </summary>
public class TestBeforeOverlappingActionsTests
{
    [Fact]
    public void A_check_that_tells_nothing_does_not_rank_above_a_test_followed_by_overlapping_actions()
    {
        var ranking = new Planner().Rank(new Case
        {
            Weights = [0.45, 0.15, 0.25, 0.15, 1],
            Broken =
            [
                [true, false, false, false],
                [false, true, false, false],
                [false, false, true, false],
                [false, false, false, true],
                [false, false, false, false],
            ],
            ActionCost = [6, 6, 2],
            Success = [[1, 1, 0, 1], [1, 1, 1, 0], [0, 0, 1, 0]],
            CheckCost = [0.125],
            Rows = [[[1], [1], [1], [1], [1]]],
        }.Build());

        // Derived: half the weight passes a free test; on the rest action 0 always (6) and action 2 in a quarter (2): 6.5 / 2.
        Assert.Equal(PlanStep.SystemTest, ranking.First.Step);
        Near.Equal(3.25, ranking.First.ExpectedCostToFinish);
        Near.Equal(3.375, ranking.Proposals.Single(p => p.Step == PlanStep.Check(0)).ExpectedCostToFinish);
    }
}
