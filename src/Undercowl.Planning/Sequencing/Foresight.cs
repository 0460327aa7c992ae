namespace Undercowl.Planning.Sequencing;

/// <summary>
/// An estimate of what going on looking would cost: what must be mended is mended at its cheapest, one test ends the job, and
/// finding out what it is costs so much per bit of what is still unknown. The prices are those of the checks on hand, as many
/// as give the bits that are wanted, best value first. It is a guide for ranking, and unlike the cost of a plan not a bound.
/// </summary>
internal sealed class Foresight
{
    /// <summary>A check that tells fewer bits than this is not bought.</summary>
    private const double Trifle = 0.01;

    /// <summary>So many bits unknown make the estimate count in full. Estimate.</summary>
    private const double Wide = 3;

    /// <summary>A bit gained now saves at most this many times the average. Estimate.</summary>
    private const double Steepest = 1.5;

    /// <summary>The last bits cost at least this share of the average. Estimate.</summary>
    private const double Floor = 0.3;

    private readonly RepairModel model;
    private readonly int[] endOf;
    private readonly CellsByEnd byEnd;
    private readonly double[] mend;
    private readonly double[] mass;
    private readonly double[] scratch;
    private double unknown;
    private double average;
    private double marginal;

    internal Foresight(RepairModel model, Cells cells, Ends ends, double[] groupWeights, double costOfActing)
    {
        this.model = model;
        endOf = ends.OfGroup;
        byEnd = new CellsByEnd(cells, Array.ConvertAll(cells.GroupOf, g => endOf[g]));
        mend = [.. ends.Components.Select(Mending)];
        mass = new double[mend.Length];
        scratch = new double[cells.Count];
        Price(cells, groupWeights, costOfActing);
    }

    /// <summary>
    /// Estimated cost from here when these are the weights of the groups (they need not sum to 1; the cost is weighted alike).
    /// Where nearly all is known the plan without checks is what one would do, and its cost counts.
    /// </summary>
    /// <param name="groupWeights">What may be the matter.</param>
    /// <param name="acting">Cost of the best plan without checks, weighted alike.</param>
    internal double Cost(double[] groupWeights, double acting)
    {
        double bits = Spread(groupWeights, out double total, out double mending);
        if (!(bits > 0)) return acting;
        double looking = mending + model.Problem.SystemTestCost * total + total * Finding(bits / total);
        return looking < acting ? acting + (looking - acting) * Math.Min(1, bits / total / Wide) : acting;
    }

    /// <summary>
    /// Cost of finding out so many bits. A bit gained now saves the dearest of those that would have been bought: near the
    /// present the curve has the marginal price for its slope, and towards certainty it flattens out.
    /// </summary>
    private double Finding(double bits) => Math.Max(Floor * average * bits, average * unknown - marginal * (unknown - bits));

    private double Mending(int[] classes)
    {
        double test = model.Problem.SystemTestCost, sum = 0;
        foreach (int c in classes)
        {
            double best = double.PositiveInfinity;
            for (int i = model.MendedBy.Start[c]; i < model.MendedBy.Start[c + 1]; i++)
            {
                double success = model.MendedBy.Value[i];
                best = Math.Min(best, (model.Problem.Actions.Cost[model.MendedBy.Entry[i]] + test * (1 - success)) / success);
            }

            sum += best;
        }

        return Math.Min(sum, model.Problem.ReferCost);
    }

    /// <summary>Entropy of what must be mended, in bits times the total weight.</summary>
    private double Spread(double[] groupWeights, out double total, out double mending)
    {
        Array.Clear(mass);
        double[] masses = mass, costs = mend;
        int[] ends = endOf;
        for (int g = 0; g < ends.Length; g++) masses[ends[g]] += groupWeights[g];

        mending = 0;
        for (int e = 0; e < masses.Length; e++) mending += masses[e] * costs[e];
        return Entropy(out total);
    }

    /// <summary>Of the masses of the ends, in bits times their sum.</summary>
    private double Entropy(out double total)
    {
        double sum = 0;
        total = 0;
        double[] masses = mass;
        for (int e = 0; e < masses.Length; e++)
        {
            double m = masses[e];
            if (!(m > 0)) continue;
            total += m;
            sum += m * Math.Log2(m);
        }

        return total > 0 ? Math.Max(0, total * Math.Log2(total) - sum) : 0;
    }

    /// <summary>
    /// Buys bits, best value first, until what must be mended is known. Checks that tell the same must not be counted twice:
    /// what one adds is counted beyond each of those bought, one at a time.
    /// </summary>
    private void Price(Cells cells, double[] groupWeights, double costOfActing)
    {
        double bits = Spread(groupWeights, out double total, out double mending);
        if (!(bits > 1e-9)) return;
        CheckTable checks = model.Problem.Checks;
        var alone = new double[checks.Cost.Length];
        double[] weights = byEnd.Laid(cells.Weight);
        var offers = new PriorityQueue<(int Check, double Bits, int Beyond), double>();
        for (int k = 0; k < alone.Length; k++)
        {
            if (checks.Allowed is null || checks.Allowed[k]) Offer(k, bits - (alone[k] = Left(weights, k)), 0);
        }

        double bought = 0, paid = 0, last = 0;
        var taken = new List<int>();
        var left = new List<double>();
        while (bought < bits && offers.TryDequeue(out var best, out _))
        {
            if (best.Beyond < taken.Count)
            {
                // One more of those bought at a time: most fall behind others before all have been looked at.
                Offer(best.Check, Math.Min(best.Bits, left[best.Beyond] - Left(weights, best.Check, taken[best.Beyond])), best.Beyond + 1);
                continue;
            }

            double share = Math.Min(1, (bits - bought) / best.Bits);
            bought += best.Bits * share;
            paid += checks.Cost[best.Check] * share;
            last = checks.Cost[best.Check] / best.Bits;
            taken.Add(best.Check);
            left.Add(alone[best.Check]);
        }

        // What the checks on hand cannot tell is found out by trying repairs, as the plan without checks does.
        double trying = Math.Max(0, costOfActing - mending - model.Problem.SystemTestCost * total) / bits;
        unknown = bits / total;
        average = (paid + trying * (bits - bought)) / bits;
        marginal = Math.Clamp(last, average, Steepest * average);

        void Offer(int check, double gain, int beyond)
        {
            if (gain > Trifle) offers.Enqueue((check, gain, beyond), checks.Cost[check] / gain);
        }
    }

    /// <summary>Bits left unknown when the answers of two checks are known.</summary>
    private double Left(double[] weight, int check, int other)
    {
        double[] beyond = byEnd.Chance[other], joint = scratch;
        double left = 0;
        for (int start = 0; start < beyond.Length; start += weight.Length)
        {
            for (int i = 0; i < joint.Length; i++) joint[i] = weight[i] * beyond[start + i];
            left += Left(joint, check);
        }

        return left;
    }

    /// <summary>Bits left unknown when the answer of a check is known.</summary>
    /// <param name="weight">By place of <see cref="CellsByEnd"/>.</param>
    /// <param name="check">The check.</param>
    private double Left(double[] weight, int check)
    {
        double[] chance = byEnd.Chance[check];
        int[] first = byEnd.First;
        double left = 0;
        for (int start = 0; start < chance.Length; start += weight.Length)
        {
            double total = 0, sum = 0;
            for (int e = 0, i = 0; e < first.Length - 1; e++)
            {
                double m = 0;
                for (int end = first[e + 1]; i < end; i++) m += weight[i] * chance[start + i];
                if (!(m > 0)) continue;
                total += m;
                sum += m * Math.Log2(m);
            }

            left += total > 0 ? Math.Max(0, total * Math.Log2(total) - sum) : 0;
        }

        return left;
    }
}
