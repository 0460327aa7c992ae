namespace Undercowl.Planning;

/// <summary>
/// A decision-theoretic troubleshooting problem as plain arrays: weighted hypotheses, actions that mend, checks that
/// tell hypotheses apart, shared set-ups, and the costs of testing and of giving up. It is the question, not the
/// answer: <see cref="Planner"/> answers it. All costs are in one unit of the caller's choice.
/// </summary>
public sealed class TroubleshootingProblem
{
    /// <summary>Takes the tables as they are, without copying, and checks every number.</summary>
    /// <param name="hypotheses">What may be the matter.</param>
    /// <param name="actions">What can be done to mend it.</param>
    /// <param name="checks">What can be looked at.</param>
    /// <param name="clusters">Set-ups that actions and checks share.</param>
    /// <param name="systemTestCost">Paid at every system test; finite, not negative.</param>
    /// <param name="referCost">Paid once to end the job unmended; finite, not negative.</param>
    /// <param name="decisions">Other ways of ending it. Null: none.</param>
    /// <exception cref="PlanningException">An array has the wrong length or a number out of range.</exception>
    public TroubleshootingProblem(
        HypothesisTable hypotheses,
        ActionTable actions,
        CheckTable checks,
        ClusterTable clusters,
        double systemTestCost,
        double referCost,
        DecisionTable? decisions = null)
    {
        ArgumentNullException.ThrowIfNull(hypotheses);
        ArgumentNullException.ThrowIfNull(actions);
        ArgumentNullException.ThrowIfNull(checks);
        ArgumentNullException.ThrowIfNull(clusters);
        Hypotheses = hypotheses;
        Actions = actions;
        Checks = checks;
        Clusters = clusters;
        Decisions = decisions ?? DecisionTable.None;
        SystemTestCost = systemTestCost;
        ReferCost = referCost;
        ProblemRules.Enforce(this);
    }

    public HypothesisTable Hypotheses { get; }

    public ActionTable Actions { get; }

    public CheckTable Checks { get; }

    public ClusterTable Clusters { get; }

    public DecisionTable Decisions { get; }

    /// <summary>Cost of one system test, without the closing of clusters it may demand.</summary>
    public double SystemTestCost { get; }

    /// <summary>Cost of ending the job unmended.</summary>
    public double ReferCost { get; }
}
