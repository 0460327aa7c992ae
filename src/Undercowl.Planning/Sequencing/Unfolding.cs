namespace Undercowl.Planning.Sequencing;

/// <summary>
/// Looks many steps ahead. At each position the cheapest is taken of acting without further checks, of deciding, of the checks
/// that tell most for their cost, and of mending with a test after it; what follows those is unfolded in the same way. The
/// search is widened while work is left: first one check and one repair are tried at each position, then two, and so on.
/// </summary>
/// <remarks>
/// Where little weight is left an estimate closes the branch (<see cref="Foresight"/>), so the costs of large problems are not
/// bounds. In small ones a closed branch acts without further checks, and what is found is what a policy costs that can be carried out.
/// </remarks>
internal sealed class Unfolding
{
    /// <summary>So many steps may follow one another.</summary>
    private const int Deepest = 16;

    /// <summary>A branch of less weight than this is closed at the first look, and at the furthest with one check at each position.</summary>
    private const double First = 0.2, Least = 0.05;

    /// <summary>With one repair tried at each position it is followed by more looking only if it mends this part at least.</summary>
    private const double WorthTesting = 0.2;

    /// <summary>Steps this much dearer than the best are not looked at more widely.</summary>
    private const double Near = 0.1;

    /// <summary>Widest search.</summary>
    private const int Widest = 64;

    /// <summary>So many checks are thought of beyond the first step.</summary>
    private const int MostLooked = 48;

    private readonly RepairModel model;
    private readonly RepairOrder order;
    private readonly OrderCost cost;
    private readonly Cells cells;
    private readonly Foresight? foresight;
    private readonly Ends ends;
    private readonly int[] looked;
    private readonly Guessing guessing;
    private readonly double[] floor;
    private readonly bool[] asked;
    private readonly Position[] at;
    private readonly int[] path;

    /// <summary>Whether a decision may pay: then a sum that has passed the best may still come back below it.</summary>
    private readonly bool pays;
    private int width = 1;
    private double least = Least;
    private long until = long.MaxValue;

    /// <param name="problem">Small enough to be looked through; see <see cref="Coarse"/>.</param>
    /// <param name="estimated">Whether branches of little weight are closed by an estimate; otherwise by acting without further checks.</param>
    internal Unfolding(TroubleshootingProblem problem, bool estimated)
    {
        model = new RepairModel(problem);
        order = new RepairOrder(model);
        cost = new OrderCost(model);
        cells = new Cells(model);
        var groupWeights = new double[model.Groups];
        for (int i = 0; i < cells.Count; i++) groupWeights[cells.GroupOf[i]] += cells.Weight[i];
        ends = new Ends(model);
        if (estimated)
        {
            order.Greedy(groupWeights, problem.Clusters.IsOpen, -1);
            foresight = new Foresight(model, cells, ends, groupWeights, cost.Best(order, problem.Clusters.IsOpen).Cost);
        }

        asked = new bool[model.Problem.Checks.Cost.Length];
        path = new int[model.Problem.Actions.Cost.Length];
        pays = problem.Decisions.Cost.Any(c => c < 0);
        guessing = new Guessing(cells, EndOf());
        floor = Floors();
        at = [.. Enumerable.Range(0, Deepest + 2).Select(_ => new Position(model, cells))];
        at[0].Begin();
        double sure = guessing.Right(at[0]);
        IEnumerable<int> checks = Enumerable.Range(0, asked.Length).Where(k => problem.Checks.Allowed is null || problem.Checks.Allowed[k]);
        MostTelling = [.. checks.OrderByDescending(k => Ratios.Of(Gain(k, sure), Price(at[0], k, out _)))];
        looked = [.. MostTelling.Take(MostLooked).Order()];
    }

    internal long Work { get; private set; }

    /// <summary>The checks, those first that now tell most of what must be mended for their cost.</summary>
    internal int[] MostTelling { get; }

    /// <summary>Expected cost of each of the steps and of what follows it.</summary>
    /// <param name="steps">Possible first steps.</param>
    /// <param name="work">Numbers that may be touched; narrow looks are ended even beyond that.</param>
    internal double[] Values(IReadOnlyList<PlanStep> steps, long work)
    {
        // The first look is always ended; a further one is begun if it can be expected to end, and not counted if it does not.
        (width, least, until) = (1, First, long.MaxValue);
        double[] values = [.. steps.Select(Value)];
        until = work;
        long last = Work;
        while (least > Least && 2 * last <= work - Work)
        {
            least /= 2;
            if (!Again(Enumerable.Range(0, steps.Count))) return values;
        }

        while (least <= Least && width < Widest && 4 * last <= work - Work)
        {
            (width, least) = (2 * width, least / 4);
            double near = values.Min();
            near += Near * Math.Abs(near);
            if (!Again(Enumerable.Range(0, steps.Count).Where(s => values[s] <= near))) return values;
        }

        return values;

        bool Again(IEnumerable<int> which)
        {
            long before = Work;
            var next = (double[])values.Clone();
            foreach (int s in which) next[s] = Value(steps[s]);
            last = Work - before;
            if (Work <= until) values = next;
            return Work <= until;
        }
    }

    private double Value(PlanStep step) => step.Kind switch
    {
        StepKind.Check => Look(0, step.Index, double.PositiveInfinity),
        StepKind.Action => MendFirst(step.Index),
        StepKind.SystemTest => Mend(0, [], double.PositiveInfinity),
        _ => double.PositiveInfinity,
    };

    /// <summary>The action and a test, or the action with those that acting would do before the first test.</summary>
    private double MendFirst(int action)
    {
        Position here = at[0];
        double alone = Mend(0, [action], double.PositiveInfinity);
        order.Greedy(here.GroupWeight, here.Open, action);
        int count = cost.ActionFirst(order, here.Open).FirstBlock;
        if (count <= 1) return alone;
        Span<int> block = stackalloc int[count];
        order.Actions.AsSpan(0, count).CopyTo(block);
        return Math.Min(alone, Mend(0, block, alone));
    }

    /// <summary>Expected cost from a position on, weighted with the chance of coming to it.</summary>
    private double Value(int depth)
    {
        Position here = at[depth];
        if (!(here.Total > 1e-12)) return 0;
        Work += cells.Count;
        long spent = order.Work + cost.Work;
        order.Greedy(here.GroupWeight, here.Open, -1, here.Done);
        var acting = cost.Best(order, here.Open);
        Work += order.Work + cost.Work - spent;
        double best = acting.Cost;
        for (int d = 0; d < model.Problem.Decisions.Count; d++) best = Math.Min(best, Decided(here, d));
        if (here.Total < least || depth >= Deepest || Work > until)
        {
            return foresight is null ? best : Math.Min(best, foresight.Cost(here.GroupLeft, best));
        }

        double lowest = 0;
        for (int i = 0; i < floor.Length; i++) lowest += here.Left[i] * floor[i];

        // The order is overwritten further down, so the block it begins with is kept.
        Span<int> block = stackalloc int[acting.FirstBlock];
        order.Actions.AsSpan(here.Done.Length, block.Length).CopyTo(block);
        double mended = here.Total - order.LeftAfter[here.Done.Length + block.Length];
        if (block.Length > 0 && (width > 1 || mended >= WorthTesting * here.Total)) best = Math.Min(best, Mend(depth, block, best));
        if (here.Met > 0 && (width > 1 || here.Met >= WorthTesting * here.Total)) best = Math.Min(best, Mend(depth, [], best));
        if (width > 1) best = MendOtherwise(depth, block, best);
        return LookOn(depth, best, lowest);
    }

    /// <summary>The checks that tell most for their cost, as many as the search is wide.</summary>
    private double LookOn(int depth, double best, double lowest)
    {
        Position here = at[depth];
        int wide = Math.Min(width, looked.Length), count = 0;
        Span<int> chosen = stackalloc int[wide];
        Span<double> score = stackalloc double[wide];
        double sure = guessing.Right(here);
        foreach (int k in looked)
        {
            if (asked[k]) continue;
            double price = Price(here, k, out _);
            // A check that cannot pay even if it told all is none, nor one that would have to tell more than all to be chosen.
            if (here.Total * price + lowest >= best) continue;
            if (count == wide && Ratios.Of(1.000001 * (here.Total - sure), price) < score[wide - 1])
            {
                Work += cells.Chance[k].Length;
                continue;
            }

            double gain = Gain(k, sure);
            if (gain > 1e-9 * here.Total) Choose(chosen, score, ref count, k, Ratios.Of(gain, price));
        }

        for (int i = 0; i < count; i++) best = Math.Min(best, Look(depth, chosen[i], best));
        return best;
    }

    /// <summary>Single actions other than those that acting would begin with, the best for their cost.</summary>
    private double MendOtherwise(int depth, ReadOnlySpan<int> block, double best)
    {
        Position here = at[depth];
        int wide = Math.Min(width - 1, model.Useful.Length), count = 0;
        Span<int> chosen = stackalloc int[wide];
        Span<double> score = stackalloc double[wide];
        foreach (int a in model.Useful)
        {
            if (here.IsDone(a) || (block is [var only] && only == a)) continue;
            Choose(chosen, score, ref count, a, Ratios.Of(here.Benefit(a), model.Problem.Actions.Cost[a] + model.Problem.SystemTestCost));
        }

        for (int i = 0; i < count; i++) best = Math.Min(best, Mend(depth, [chosen[i]], best));
        return best;
    }

    /// <summary>Puts an item among the chosen, which stand in order of their scores, if there is room or it is better than one of them.</summary>
    private static void Choose(Span<int> chosen, Span<double> score, ref int count, int item, double own)
    {
        if (!(own > 0)) return;
        int place = count;
        for (; place > 0 && score[place - 1] < own; place--)
        {
            if (place < chosen.Length) (score[place], chosen[place]) = (score[place - 1], chosen[place - 1]);
        }

        if (place == chosen.Length) return;
        (score[place], chosen[place]) = (own, item);
        if (count < chosen.Length) count++;
    }

    /// <summary>Cost of a check and of what follows each outcome; infinite once it is no cheaper than the best known.</summary>
    private double Look(int depth, int check, double best)
    {
        Position here = at[depth], next = at[depth + 1];
        double sum = here.Total * Price(here, check, out int opens);
        asked[check] = true;
        for (int o = 0; o < model.Problem.Checks.Outcomes[check] && (pays || sum < best); o++)
        {
            next.Answered(here, check, o);
            if (opens >= 0) next.Open[opens] = true;
            sum += Value(depth + 1);
        }

        asked[check] = false;
        return sum < best ? sum : double.PositiveInfinity;
    }

    /// <summary>Cost of actions, if any, of the test after them, and of what follows when it fails; infinite once no cheaper than the best known.</summary>
    private double Mend(int depth, ReadOnlySpan<int> actions, double best)
    {
        Position here = at[depth], next = at[depth + 1];
        ClusterTable clusters = model.Problem.Clusters;
        double run = cost.TestNow(here.Open);
        next.Failed(here, actions);
        foreach (int a in actions)
        {
            run += model.Problem.Actions.Cost[a];
            if (model.ClusterOf[a] is not (>= 0 and var g) || next.Open[g]) continue;
            run += clusters.OpenCost[g] + clusters.CloseCost[g];
            next.Open[g] = true;
        }

        double sum = here.Total * run;
        if (model.Problem.Actions.RepairCost is not null && actions.Length > 0)
        {
            here.Done.CopyTo(path);
            actions.CopyTo(path.AsSpan(here.Done.Length));
            long spent = order.Work;
            order.Follow(here.GroupWeight, path.AsSpan(0, here.Done.Length + actions.Length), here.Done.Length);
            sum += order.RepairSpent[order.Count] - order.RepairSpent[here.Done.Length];
            Work += order.Work - spent;
        }

        if (!pays && sum >= best) return double.PositiveInfinity;
        for (int g = 0; g < next.Open.Length; g++) next.Open[g] &= clusters.TestInside[g];
        sum += Value(depth + 1);
        return sum < best ? sum : double.PositiveInfinity;
    }

    private double Price(Position here, int check, out int opens)
    {
        ClusterTable clusters = model.Problem.Clusters;
        opens = model.Problem.Checks.Cluster is { } cluster && cluster[check] is >= 0 and var g && !here.Open[g] ? g : -1;
        double price = model.Problem.Checks.Cost[check];
        return opens < 0 ? price : price + clusters.OpenCost[opens] + (clusters.TestInside[opens] ? clusters.CloseCost[opens] : 0);
    }

    private double Decided(Position here, int decision)
    {
        double sum = 0;
        for (int i = 0; i < cells.Count; i++) sum += here.Left[i] * cells.Decide[decision * cells.Count + i];
        return sum;
    }

    /// <summary>What the answer of a check adds to the chance of guessing right what it ends in, times the weight.</summary>
    private double Gain(int check, double sure)
    {
        Work += cells.Chance[check].Length;
        return guessing.Right(check) - sure;
    }

    /// <summary>By cell: what it ends in, as a number; cells that the same actions mend and the same decisions suit share one.</summary>
    private int[] EndOf()
    {
        int decisions = model.Problem.Decisions.Count;
        var numbers = new Dictionary<(int, string), int>();
        var found = new int[cells.Count];
        for (int i = 0; i < found.Length; i++)
        {
            string suits = string.Join(',', Enumerable.Range(0, decisions).Select(d => FormattableString.Invariant($"{cells.Decide[d * cells.Count + i]:R}")));
            var key = (ends.OfGroup[cells.GroupOf[i]], suits);
            if (!numbers.TryGetValue(key, out found[i])) numbers[key] = found[i] = numbers.Count;
        }

        return found;
    }

    /// <summary>By cell: what it costs at least to end the job there, were it known. Any but one of its faults may be mended already.</summary>
    private double[] Floors()
    {
        var floors = new double[cells.Count];
        for (int i = 0; i < floors.Length; i++)
        {
            ReadOnlySpan<int> broken = model.Broken[cells.GroupOf[i]];
            double mend = broken.IsEmpty ? 0 : double.PositiveInfinity;
            foreach (int c in broken)
            {
                foreach (int a in model.MendedBy[c]) mend = Math.Min(mend, model.Problem.Actions.Cost[a]);
            }

            floors[i] = Math.Min(mend + model.Problem.SystemTestCost, model.Problem.ReferCost);
            for (int d = 0; d < model.Problem.Decisions.Count; d++) floors[i] = Math.Min(floors[i], cells.Decide[d * cells.Count + i]);
        }

        return floors;
    }
}
