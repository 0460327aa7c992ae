using Undercowl.Planning.Tests.Twin;

namespace Undercowl.Planning.Tests.Published;

/// <summary>
/// The light print of J. Vomlel's troubleshooting slides (2007): causes distribution .4, toner .3, data .2, driver .1; reseat the toner
/// 5, other toner 15 (.9 for the first two causes), cycle the power 1; ask whether the configuration page is light, 2 (yes for the first
/// two causes). The other success rates are not public and are assumed here, so the expected numbers are derived, not published.
/// </summary>
public class LightPrintTests
{
    private static Case Print(double reseat, double cycle) => new()
    {
        Weights = [0.4, 0.3, 0.2, 0.1],
        ActionCost = [5, 15, 1],
        Success = [[reseat, 0, 0, 0], [0.9, 0.9, 0, 0], [0, 0, cycle, 0]],
        CheckCost = [2],
        Rows = [[[1, 0], [1, 0], [0, 1], [0, 1]]],
        Refer = 50,
    };

    [Theory]
    [InlineData(0.5, 0.9, 22.75, 21.65)]
    [InlineData(0.9, 0.9, 19.7, 18.6)]
    [InlineData(1, 1, 17.5, 16.8)]
    public void Asking_about_the_configuration_page_first_saves_what_the_sums_say(
        double reseat, double cycle, double without, double with)
    {
        // Derived for the first row. Without the question 3,2,1: 1 + .82*15 + .19*5 + .17*50 = 22.75. With it:
        // 2; yes .7: 2 then 1: .7*15 + .07*5 + .05*50 = 13.35; no .3: 3: .3*1 + .12*50 = 6.3; together 21.65.
        TroubleshootingProblem problem = Print(reseat, cycle).Build();
        Ranking ranking = new Planner().Rank(problem);
        Near.Equal(without, ranking.ExpectedCostOfActing);
        Proposal question = ranking.Proposals.Single(p => p.Step.Kind == StepKind.Check);
        Near.Equal(with, question.ExpectedCostToFinish);
        Near.Equal(without - with + 2, question.Information);
        Assert.Equal(PlanStep.Check(0), ranking.First.Step);

        Near.Equal(without, Exhaustive.Optimum(Worlds.Start(problem), checks: false));
        Near.Equal(with, Exhaustive.Optimum(Worlds.Start(problem), checks: true));
    }

    [Fact]
    public void A_question_that_costs_more_than_its_answer_saves_is_not_asked_first()
    {
        TroubleshootingProblem problem = (Print(0.5, 0.9) with { CheckCost = [3.2] }).Build();
        Ranking ranking = new Planner().Rank(problem);
        // Derived: its answer saves 22.75 - 19.65 = 3.1.
        Assert.Equal(StepKind.Action, ranking.First.Step.Kind);
        Near.Equal(22.85, ranking.Proposals.Single(p => p.Step.Kind == StepKind.Check).ExpectedCostToFinish);
    }
}
