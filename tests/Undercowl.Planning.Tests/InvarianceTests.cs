using CsCheck;
using Undercowl.Planning.Tests.Twin;

namespace Undercowl.Planning.Tests;

/// <summary>What must not change the answer, or must change it in a known way.</summary>
public class InvarianceTests
{
    private static readonly Gen<int> Seeds = Gen.Int[0, 1_000_000];

    [Fact]
    public void Scaling_the_weights_changes_nothing() => Gen.Select(Seeds, Gen.Double[1e-6, 1e6]).Sample((seed, factor) =>
    {
        Case case_ = RandomCases.Tangled(seed, 3);
        Case scaled = case_ with { Weights = [.. case_.Weights.Select(w => w * factor)] };
        Same(new Planner().Rank(case_.Build()), new Planner().Rank(scaled.Build()), 1, step => step);
    }, iter: 300, threads: 1);

    [Fact]
    public void Another_unit_of_cost_only_scales_the_costs() => Gen.Select(Seeds, Gen.Double[1e-3, 1e3]).Sample((seed, unit) =>
    {
        Case case_ = RandomCases.Tangled(seed, 3);
        Case other = case_ with
        {
            ActionCost = Times(case_.ActionCost),
            RepairCost = case_.RepairCost is { } repair ? Times(repair) : null,
            CheckCost = Times(case_.CheckCost),
            Clusters = new ClusterTable
            {
                OpenCost = Times(case_.Clusters.OpenCost),
                CloseCost = Times(case_.Clusters.CloseCost),
                IsOpen = case_.Clusters.IsOpen,
                TestInside = case_.Clusters.TestInside,
            },
            SystemTest = case_.SystemTest * unit,
            Refer = case_.Refer * unit,
        };
        Same(new Planner().Rank(case_.Build()), new Planner().Rank(other.Build()), unit, step => step);
        double[] Times(double[] costs) => [.. costs.Select(x => x * unit)];
    }, iter: 300, threads: 1);

    [Fact]
    public void Renumbering_actions_checks_and_hypotheses_only_renumbers_the_proposals() => Gen.Select(Seeds, Seeds).Sample((seed, shuffle) =>
    {
        Case case_ = RandomCases.Tangled(seed, 3);
        var random = new Random(shuffle);
        int[] a = Shuffled(case_.ActionCost.Length), k = Shuffled(3), h = Shuffled(case_.Weights.Length);
        Case other = case_ with
        {
            Weights = Pick(case_.Weights, h),
            Broken = Pick(case_.Broken!, h),
            ActionCost = Pick(case_.ActionCost, a),
            Success = Pick(case_.Success, a),
            RepairCost = case_.RepairCost is { } repair ? Pick(repair, a) : null,
            ActionCluster = Pick(case_.ActionCluster!, a),
            CheckCost = Pick(case_.CheckCost, k),
            Rows = [.. Pick(case_.Rows, k).Select(rows => Pick(rows, h))],
            CheckCluster = Pick(case_.CheckCluster!, k),
        };
        Same(new Planner().Rank(case_.Build()), new Planner().Rank(other.Build()), 1, step => step.Kind switch
        {
            StepKind.Action => PlanStep.Action(Array.IndexOf(a, step.Index)),
            StepKind.Check => PlanStep.Check(Array.IndexOf(k, step.Index)),
            _ => step,
        });

        int[] Shuffled(int count)
        {
            int[] order = [.. Enumerable.Range(0, count)];
            random.Shuffle(order);
            return order;
        }

        static T[] Pick<T>(T[] from, int[] order) => [.. order.Select(i => from[i])];
    }, iter: 300, threads: 1);

    [Fact]
    public void A_hypothesis_told_apart_only_in_name_changes_nothing() => Seeds.Sample(seed =>
    {
        Case case_ = RandomCases.Tangled(seed, 3);
        Case split = case_ with
        {
            Weights = [case_.Weights[0] * 0.3, .. case_.Weights[1..], case_.Weights[0] * 0.7, 0],
            Broken = [.. case_.Broken!, case_.Broken![0], case_.Broken[1]],
            Rows = [.. case_.Rows.Select(rows => (double[][])[.. rows, rows[0], rows[1]])],
        };
        Same(new Planner().Rank(case_.Build()), new Planner().Rank(split.Build()), 1, step => step);
    }, iter: 300, threads: 1);

    [Fact]
    public void A_check_that_tells_nothing_never_comes_before_acting_even_when_free() => Seeds.Sample(seed =>
    {
        Case case_ = RandomCases.Tangled(seed, 2);
        var random = new Random(seed);
        double[][] row = RandomCases.Outcomes(random, 1);
        Case mute = case_ with
        {
            CheckCost = [0, 0],
            Rows = [.. case_.Rows.Select(_ => Enumerable.Repeat(row[0], case_.Weights.Length).ToArray())],
        };
        Ranking ranking = new Planner().Rank(mute.Build());
        Assert.NotEqual(StepKind.Check, ranking.First.Step.Kind);
        Assert.All(ranking.Proposals.Where(p => p.Step.Kind == StepKind.Check), p => Assert.Equal(0, p.Information));
    }, iter: 1000, threads: 1);

    [Fact]
    public void Knowing_more_is_never_priced_as_harm() => Seeds.Sample(seed =>
    {
        Ranking ranking = new Planner().Rank(RandomCases.Tangled(seed, 3).Build());
        foreach (Proposal proposal in ranking.Proposals)
        {
            Assert.True(proposal.Information >= 0);
            Assert.InRange(proposal.ProbabilityOfHelp, 0, 1 + Near.Sums);
            Assert.InRange(proposal.ProbabilityOfCure, 0, 1 + Near.Sums);
            Near.AtLeast(proposal.CostNow, proposal.ExpectedCostToFinish);
        }

        Near.Equal(
            ranking.ExpectedCostOfActing,
            ranking.Proposals.Where(p => p.Step.Kind != StepKind.Check).Min(p => p.ExpectedCostToFinish));
    }, iter: 500, threads: 1);

    private static void Same(Ranking one, Ranking other, double unit, Func<PlanStep, PlanStep> renumber)
    {
        var there = other.Proposals.ToDictionary(p => p.Step);
        Assert.Equal(one.Proposals.Count, there.Count);
        foreach (Proposal expected in one.Proposals)
        {
            Proposal actual = there[renumber(expected.Step)];
            Near.Equal(expected.ExpectedCostToFinish * unit, actual.ExpectedCostToFinish);
            Near.Equal(expected.Information * unit, actual.Information);
            Near.Equal(expected.ProbabilityOfCure, actual.ProbabilityOfCure);
        }
    }
}
