namespace Undercowl.Planning.Tests;

/// <summary>A problem that makes no sense is refused with the array, the place and the mend.</summary>
public class RulesTests
{
    private static Case Sound => Case.OneActionEach([0.6, 0.4], [1, 2]) with
    {
        CheckCost = [1],
        Rows = [[[0.9, 0.1], [0.2, 0.8]]],
    };

    private static readonly Dictionary<string, (Case Case, string Array, int? Index)> Breaches = new()
    {
        ["a weight below 0"] = (Sound with { Weights = [0.6, -0.4] }, "Hypotheses.Weights", 1),
        ["a weight without a value"] = (Sound with { Weights = [double.NaN, 0.4] }, "Hypotheses.Weights", 0),
        ["no weight at all"] = (Sound with { Weights = [0, 0] }, "Hypotheses.Weights", null),
        ["an action cost too many"] = (Sound with { ActionCost = [1, 2, 3] }, "Actions.Success", null),
        ["an endless cost"] = (Sound with { ActionCost = [1, double.PositiveInfinity] }, "Actions.Cost", 1),
        ["a success above 1"] = (Sound with { Success = [[1, 0], [0, 1.1]] }, "Actions.Success", 3),
        ["a repair cost missing"] = (Sound with { RepairCost = [1] }, "Actions.RepairCost", null),
        ["a cluster that is not there"] = (Sound with { ActionCluster = [0, -1] }, "Actions.Cluster", 0),
        ["leave for one action only"] = (Sound with { ActionAllowed = [true] }, "Actions.Allowed", null),
        ["a check cost below 0"] = (Sound with { CheckCost = [-1] }, "Checks.Cost", 0),
        ["a row that sums to .9"] = (Sound with { Rows = [[[0.9, 0.1], [0.1, 0.8]]] }, "Checks.OutcomeProbability", 2),
        ["an outcome below 0"] = (Sound with { Rows = [[[0.9, 0.1], [-0.2, 1.2]]] }, "Checks.OutcomeProbability", 2),
        ["a check in a cluster that is not there"] = (Sound with { CheckCluster = [3] }, "Checks.Cluster", 0),
        ["leave for two checks of one"] = (Sound with { CheckAllowed = [true, true] }, "Checks.Allowed", null),
        ["a decision that lacks a hypothesis"] = (Sound with { Decisions = [[1]] }, "Decisions.Cost", null),
        ["an endless payoff"] = (Sound with { Decisions = [[1, double.NegativeInfinity]] }, "Decisions.Cost", 1),
        ["a system test below 0"] = (Sound with { SystemTest = -1 }, "SystemTestCost", null),
        ["a refer cost without a value"] = (Sound with { Refer = double.NaN }, "ReferCost", null),
        ["a cluster that is neither open nor closed"] = (
            Sound with { Clusters = new ClusterTable { OpenCost = [1], CloseCost = [1], IsOpen = [], TestInside = [true] } },
            "Clusters.IsOpen",
            null),
    };

    public static TheoryData<string> Names => [.. Breaches.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_breach_is_refused_by_name_and_place(string breach)
    {
        (Case case_, string array, int? index) = Breaches[breach];
        PlanningException error = Assert.Throws<PlanningException>(() => case_.Build());
        Assert.Equal(array, error.Array);
        Assert.Equal(index, error.Index);
        Assert.StartsWith(index is null ? array : $"{array}[{index}]", error.Message, StringComparison.Ordinal);
        Assert.Contains(';', error.Message);
    }

    [Fact]
    public void A_sound_problem_is_taken() => Assert.Equal(2, Sound.Build().Hypotheses.Components);

    [Fact]
    public void Rows_of_impossible_hypotheses_are_not_read()
    {
        Case case_ = Sound with { Weights = [1, 0], Rows = [[[0.9, 0.1], [double.NaN, 7]]] };
        Ranking ranking = new Planner().Rank(case_.Build());
        Near.Equal(1, ranking.ExpectedCostOfActing);
    }
}
