namespace Undercowl.Planning;

/// <summary>
/// What can be done to mend components. An action is tried at most once in a plan; given the hypothesis, actions succeed
/// independently of one another and of component. Actions are not checks: all one sees of an action is the next system test.
/// </summary>
/// <remarks>The arrays are not copied: leave them alone while a planner uses them.</remarks>
public sealed class ActionTable
{
    /// <summary>A table without actions.</summary>
    public static ActionTable None { get; } = new() { Cost = [], Success = [] };

    /// <summary>One per action: paid whenever the action is carried out. Finite, not negative; any one unit throughout.</summary>
    public required double[] Cost { get; init; }

    /// <summary>
    /// <c>[a*C + c]</c>: probability, 0 to 1, that action a mends component c if c is broken. It leaves a sound
    /// component sound.
    /// </summary>
    public required double[] Success { get; init; }

    /// <summary>
    /// One per action: paid on top of <see cref="Cost"/> only when the action finds one of its components broken (a part
    /// fitted only if inspection condemns the old one). Null: none.
    /// </summary>
    public double[]? RepairCost { get; init; }

    /// <summary>One per action: the cluster it is done in, or -1. Null: no action is in a cluster.</summary>
    public int[]? Cluster { get; init; }

    /// <summary>One per action: whether it may be planned. Null: all may.</summary>
    public bool[]? Allowed { get; init; }
}
