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
    private readonly double[] mend;
    private readonly double[] mass;
    private readonly double[] scratch;
    private double unknown;
    private double average;
    private double marginal;

    internal Foresight(RepairModel model, Ends ends, double[] groupWeights, double costOfActing)
    {
        this.model = model;
        endOf = ends.OfGroup;
        mend = [.. ends.Components.Select(Mending)];
        mass = new double[mend.Length];
        scratch = new double[model.Groups];
        Price(groupWeights, costOfActing);
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
        (total, mending) = (0, 0);
        for (int g = 0; g < endOf.Length; g++)
        {
            mass[endOf[g]] += groupWeights[g];
        }

        double sum = 0;
        for (int e = 0; e < mass.Length; e++)
        {
            double m = mass[e];
            if (!(m > 0)) continue;
            total += m;
            mending += m * mend[e];
            sum += m * Math.Log2(m);
        }

        return total > 0 ? Math.Max(0, total * Math.Log2(total) - sum) : 0;
    }

    /// <summary>
    /// Buys bits, best value first, until what must be mended is known. Checks that tell the same must not be counted twice:
    /// what one adds is counted beyond each of those bought, one at a time.
    /// </summary>
    private void Price(double[] groupWeights, double costOfActing)
    {
        double bits = Spread(groupWeights, out double total, out double mending);
        if (!(bits > 1e-9)) return;
        CheckTable checks = model.Problem.Checks;
        int[] starts = model.FirstRow;
        var alone = new double[starts.Length];
        var offers = new PriorityQueue<(int Check, double Bits, int Beyond), double>();
        for (int k = 0; k < starts.Length; k++)
        {
            if (checks.Allowed is null || checks.Allowed[k]) Offer(k, bits - (alone[k] = Left(starts, k, -1)), 0);
        }

        double bought = 0, paid = 0, last = 0;
        var taken = new List<int>();
        var left = new List<double>();
        while (bought < bits && offers.TryDequeue(out var best, out _))
        {
            if (best.Beyond < taken.Count)
            {
                double gain = best.Bits;
                for (int t = best.Beyond; t < taken.Count && gain > Trifle; t++) gain = Math.Min(gain, left[t] - Left(starts, best.Check, taken[t]));
                Offer(best.Check, gain, taken.Count);
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

    /// <summary>Bits left unknown when the answer of a check is known, and with it that of another; -1 for no other.</summary>
    private double Left(int[] starts, int check, int other)
    {
        CheckTable checks = model.Problem.Checks;
        double[] chance = checks.OutcomeProbability, weight = model.Weight;
        int[] possible = model.Possible, groupOf = model.GroupOf;
        int outcomes = checks.Outcomes[check], others = other < 0 ? 1 : checks.Outcomes[other];
        double left = 0;
        for (int a = 0; a < others; a++)
        {
            for (int o = 0; o < outcomes; o++)
            {
                Array.Clear(scratch);
                int at = starts[check] + o;
                if (other < 0)
                {
                    for (int i = 0; i < possible.Length; i++) scratch[groupOf[i]] += weight[i] * chance[at + possible[i] * outcomes];
                }
                else
                {
                    int beyond = starts[other] + a;
                    for (int i = 0; i < possible.Length; i++)
                    {
                        int h = possible[i];
                        scratch[groupOf[i]] += weight[i] * chance[at + h * outcomes] * chance[beyond + h * others];
                    }
                }

                left += Spread(scratch, out _, out _);
            }
        }

        return left;
    }
}
