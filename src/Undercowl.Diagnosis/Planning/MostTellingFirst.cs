using Undercowl.Planning;

namespace Undercowl.Diagnosis.Planning;

/// <summary>Puts ranked steps in the order in which they are proposed, where costs alone do not tell them apart.</summary>
internal sealed class MostTellingFirst(DrawnOutcomes outcomes, Repairs repairs, Effort effort)
{
    /// <summary>Expected costs within this ratio of one another are equal for all that the draws can tell. Estimate.</summary>
    private const double SameCost = 1.004;

    /// <summary>A remedy at least this likely to end it goes before a bare test that costs the same. Estimate.</summary>
    private const double Likely = 0.5;

    /// <summary>Such a remedy is named second if it costs no more than this many times the first step: one may have seen enough. Estimate.</summary>
    private const double SeenEnough = 1.025;

    /// <summary>A check that tells at least this part of what another tells is as good. Estimate.</summary>
    private const double AsTelling = 0.93;

    /// <summary>A check that tells fewer bits than this of what must be mended does not go before a remedy as good. Estimate.</summary>
    private const double WorthAsking = 0.15;

    /// <summary>A check that tells fewer bits than this tells next to nothing. Estimate.</summary>
    private const double Something = 0.12;

    /// <summary>What costs no more than this share of what is still to be spent can be asked before anything. Estimate.</summary>
    private const double Trifle = 0.006;

    /// <summary>What may follow the first step costs no more than this many times as much where it comes first itself. Estimate.</summary>
    private const double MayFollow = 1.01;

    /// <summary>A step that costs in first place no more than this share of itself saves some of its cost. Estimate.</summary>
    private const double Saves = 0.8;

    /// <summary>What such a step tells counts so many times as much among those that may follow. Estimate.</summary>
    private const double Paying = 2;

    /// <summary>What is drawn in a smaller part of the engines says nothing for itself. Estimate.</summary>
    private const double SeldomDrawn = 0.01;

    /// <summary>
    /// By cost; of checks that cost the same to within what draws can tell, the one first that tells most for its own cost. The
    /// best remedy comes second if it costs no more than that, or little more and is likely to end it, and gives way even where it costs
    /// a trifle less: asking spoils nothing, and the choice is between asking and mending, not among ways of asking. A bare test gives way
    /// to a remedy as cheap that is likely to end it. After a first check comes the one that tells most besides, per minute: what is proposed
    /// first and second reads as a way to go. A remedy that helps in hardly any of the engines comes last.
    /// </summary>
    public IEnumerable<Proposal> Order(IReadOnlyList<Proposal> ranked, List<Candidate> checks)
    {
        var told = new Dictionary<int, double>();
        var least = ranked.Count == 0 ? 0 : ranked[0].ExpectedCostToFinish;
        var asGood = least * SameCost;
        var estimate = ranked.ToDictionary(p => p.Step, p => p.ExpectedCostToFinish);
        var left = ranked.Select(Bounded).OrderBy(p => p.Step.Kind == StepKind.Action && p.ProbabilityOfHelp < SeldomDrawn).ThenBy(p => p.ExpectedCostToFinish).ToList();
        if (ranked is [{ Step.Kind: StepKind.Action } mend, ..] && MostTelling(p => p.ExpectedCostToFinish <= asGood && Bits(p.Step.Index) >= WorthAsking) is { } ask)
        {
            left.Remove(ask);
            left.Remove(mend);
            yield return ask;
            yield return mend;
        }

        var first = left.Count == ranked.Count;
        while (left.Count > 0)
        {
            var best = left[0];
            if (best.Step.Kind == StepKind.Check)
            {
                best = MostTelling(p => p.ExpectedCostToFinish <= best.ExpectedCostToFinish * SameCost)!;
            }
            else if (best.Step.Kind == StepKind.SystemTest)
            {
                best = left.Find(p => p.Step.Kind == StepKind.Action && p.ProbabilityOfCure >= Likely && p.ExpectedCostToFinish <= best.ExpectedCostToFinish * SameCost) ?? best;
            }

            left.Remove(best);
            yield return best;
            if (left.Count == ranked.Count - 1 && best.Step.Kind != StepKind.Action && left.Find(p => p.Step.Kind == StepKind.Action) is { } remedy && remedy.ExpectedCostToFinish <= ranked[0].ExpectedCostToFinish * (remedy.ProbabilityOfCure >= Likely ? SeenEnough : SameCost))
            {
                left.Remove(remedy);
                yield return remedy;
            }

            if (first && best.Step.Kind == StepKind.Check && Following(best) is { } then)
            {
                left.Remove(then);
                yield return then;
            }

            first = false;
        }

        // A check can be put before any other plan, so it never costs more than that and its own.
        Proposal Bounded(Proposal p) => p.Step.Kind != StepKind.Check || p.CostNow > Trifle * least || p.ExpectedCostToFinish <= least + p.CostNow || Bits(p.Step.Index) < WorthAsking
            ? p : p with { ExpectedCostToFinish = least + p.CostNow };

        Proposal? Following(Proposal before) => left
            .Where(p => p.Step.Kind == StepKind.Check && Math.Min(p.ExpectedCostToFinish, before.ExpectedCostToFinish + p.CostNow) <= before.ExpectedCostToFinish * MayFollow)
            .Where(p => checks[p.Step.Index].Check != checks[before.Step.Index].Check)
            .Select(p => (Proposal: p, Besides: Both(checks[before.Step.Index], checks[p.Step.Index]) - Bits(before.Step.Index)))
            .Where(p => p.Besides >= Something)
            .OrderByDescending(p => p.Besides / Minutes(p.Proposal.Step.Index) * (estimate[p.Proposal.Step] - before.ExpectedCostToFinish > Saves * p.Proposal.CostNow ? 1 : Paying))
            .Select(p => p.Proposal).FirstOrDefault();

        Proposal? MostTelling(Func<Proposal, bool> such)
        {
            var equal = left.Where(p => p.Step.Kind == StepKind.Check && such(p)).ToArray();
            if (equal.MaxBy(p => BitsPerMinute(p.Step.Index)) is not { } most)
            {
                return null;
            }

            // Where one check tells as much at several places, the first place is as good as any.
            return equal
                .Where(p => checks[p.Step.Index].Check == checks[most.Step.Index].Check && BitsPerMinute(p.Step.Index) >= AsTelling * BitsPerMinute(most.Step.Index))
                .MinBy(p => p.Step.Index);
        }

        double BitsPerMinute(int check) => Bits(check) / Minutes(check);

        double Minutes(int check) => effort.Minutes(checks[check].Check, checks[check].SetUp);

        double Bits(int check) => told.TryGetValue(check, out var known) ? known : told[check] = Told(outcomes.Of(checks[check]), checks[check].Outcomes.Names.Count);
    }

    /// <summary>
    /// For each drawn engine the number of what must be mended; engines in which the same must be mended share one. What was
    /// drawn a few times only is one among the rest, 0: of single draws any check seems to tell something.
    /// </summary>
    private int[] Ends => field ??= Numbered();

    private int[] Numbered()
    {
        var needed = repairs.Needed.Select(n => string.Join(',', n)).ToArray();
        var numbers = needed.CountBy(n => n).Where(c => c.Value >= SeldomDrawn * outcomes.Count).Select((c, i) => (c.Key, Number: i + 1)).ToDictionary(c => c.Key, c => c.Number);
        return Array.ConvertAll(needed, n => numbers.GetValueOrDefault(n));
    }

    /// <summary>Bits that the answers of two checks tell together.</summary>
    private double Both(Candidate one, Candidate other)
    {
        var (first, second, firsts, seconds) = (outcomes.Of(one), outcomes.Of(other), one.Outcomes.Names.Count, other.Outcomes.Names.Count);
        var chances = new double[outcomes.Count * firsts * seconds];
        for (var i = 0; i < chances.Length; i++)
        {
            var draw = i / (firsts * seconds);
            chances[i] = first[draw * firsts + i / seconds % firsts] * second[draw * seconds + i % seconds];
        }

        return Told(chances, firsts * seconds);
    }

    /// <summary>Bits that outcomes tell of what must be mended.</summary>
    /// <param name="chances">Chance of each outcome in each drawn engine, outcomes fastest.</param>
    /// <param name="answersOf">Number of outcomes.</param>
    public double Told(double[] chances, int answersOf)
    {
        var ends = Ends;
        var joint = new double[(ends.Max() + 1) * answersOf];
        for (var i = 0; i < chances.Length; i++)
        {
            joint[ends[i / answersOf] * answersOf + i % answersOf] += chances[i] / outcomes.Count;
        }

        var answers = new double[answersOf];
        var mended = new double[joint.Length / answersOf];
        for (var i = 0; i < joint.Length; i++)
        {
            answers[i % answersOf] += joint[i];
            mended[i / answersOf] += joint[i];
        }

        return Math.Max(0, Spread(answers) + Spread(mended) - Spread(joint));

        static double Spread(double[] chances) => -chances.Sum(p => p > 0 ? p * Math.Log2(p) : 0);
    }
}
