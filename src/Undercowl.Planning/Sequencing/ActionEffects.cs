namespace Undercowl.Planning.Sequencing;

/// <summary>
/// The success table without its zeros: action a works on <c>Component[Start[a]..Start[a+1]]</c> with the
/// <see cref="Success"/> beside it; component c is worked on by <c>Action[ByStart[c]..ByStart[c+1]]</c>. An action that is
/// not allowed has no effects here, so nothing downstream needs to ask.
/// </summary>
internal sealed class ActionEffects
{
    internal ActionEffects(TroubleshootingProblem problem)
    {
        ActionTable table = problem.Actions;
        int components = problem.Hypotheses.Components;
        int count = table.Cost.Length;
        List<int> component = [];
        List<double> success = [];
        List<int>[] by = new List<int>[components];
        for (int c = 0; c < components; c++) by[c] = [];
        Start = new int[count + 1];
        MendCost = new double[components];
        Array.Fill(MendCost, double.PositiveInfinity);
        for (int a = 0; a < count; a++)
        {
            for (int c = 0; c < components && table.Allowed?[a] != false; c++)
            {
                double s = table.Success[(a * components) + c];
                if (s == 0) continue;
                component.Add(c);
                success.Add(s);
                by[c].Add(a);
                MendCost[c] = Math.Min(MendCost[c], (table.Cost[a] + problem.SystemTestCost) / s);
            }

            Start[a + 1] = component.Count;
        }

        Component = [.. component];
        Success = [.. success];
        ByStart = new int[components + 1];
        for (int c = 0; c < components; c++) ByStart[c + 1] = ByStart[c] + by[c].Count;
        Action = [.. by.SelectMany(list => list)];
    }

    internal int[] Start { get; }

    internal int[] Component { get; }

    internal double[] Success { get; }

    internal int[] ByStart { get; }

    internal int[] Action { get; }

    /// <summary>
    /// The least cost per unit of success at which each component can be mended; infinite when nothing mends it.
    /// It shares a hypothesis of several components out among them (see docs/how-planning-works.md).
    /// </summary>
    internal double[] MendCost { get; }
}
