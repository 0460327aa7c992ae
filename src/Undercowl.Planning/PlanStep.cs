namespace Undercowl.Planning;

/// <summary>What a step of a plan does. The order of the members breaks ties between equally cheap proposals.</summary>
public enum StepKind
{
    /// <summary>Try to mend: the index is that of the action.</summary>
    Action,

    /// <summary>See whether the goal is met; a test that passes ends the job. The index is 0.</summary>
    SystemTest,

    /// <summary>End the job with a terminal decision: the index is that of the decision.</summary>
    Decide,

    /// <summary>Look without mending: the index is that of the check.</summary>
    Check,

    /// <summary>Hand the job on at the refer cost, which ends it. The index is 0.</summary>
    Refer,
}

/// <summary>
/// One step of a plan: a kind and an index into that kind's table. It says what to do, not what it costs
/// (<see cref="Proposal"/> does). The default value is action 0.
/// </summary>
public readonly record struct PlanStep(StepKind Kind, int Index)
{
    /// <summary>The test of the whole system.</summary>
    public static PlanStep SystemTest => new(StepKind.SystemTest, 0);

    /// <summary>The terminal step: hand the job on.</summary>
    public static PlanStep Refer => new(StepKind.Refer, 0);

    /// <summary>The step that carries out action <paramref name="index"/>.</summary>
    public static PlanStep Action(int index) => new(StepKind.Action, index);

    /// <summary>The terminal step that takes decision <paramref name="index"/>.</summary>
    public static PlanStep Decide(int index) => new(StepKind.Decide, index);

    /// <summary>The step that makes check <paramref name="index"/>.</summary>
    public static PlanStep Check(int index) => new(StepKind.Check, index);
}
