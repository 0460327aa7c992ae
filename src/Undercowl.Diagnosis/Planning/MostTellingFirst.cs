using Undercowl.Knowledge;
using Undercowl.Planning;

namespace Undercowl.Diagnosis.Planning;

/// <summary>Puts ranked steps in the order in which they are proposed, where costs alone do not tell them apart.</summary>
internal sealed class MostTellingFirst(EngineLayout layout, DrawnOutcomes outcomes, Repairs repairs, Effort effort)
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

    /// <summary>What costs no more than this share of what is still to be spent can be asked before anything. Estimate.</summary>
    private const double Trifle = 0.006;

    /// <summary>What is drawn in a smaller part of the engines says nothing for itself. Estimate.</summary>
    private const double SeldomDrawn = 0.01;

    /// <summary>
    /// By cost; of checks that cost the same to within what draws can tell, the one first that tells most for its own cost. The
    /// best remedy comes second if it costs no more than that, or little more and is likely to end it, and gives way even where it costs
    /// a trifle less: asking spoils nothing, and the choice is between asking and mending, not among ways of asking. A bare test gives way
    /// to a remedy as cheap that is likely to end it. What was cheapest and gave way to a check that costs the same
    /// comes second. What a job is handed on for is put to the test before, and what an exchange takes apart is looked at before. A remedy that helps in hardly any of the engines comes last.
    /// </summary>
    public IEnumerable<Proposal> Order(IReadOnlyList<Proposal> ranked, List<Candidate> checks)
    {
        Proposal[] ordered = [.. Ordered(ranked, checks)];
        return ordered is [var first, ..] && LookedAt(first, ordered, checks) is { } look ? [look, .. ordered.Where(p => p != look)] : ordered;
    }

    /// <summary>An exchange parts connectors. What can be seen there is seen before, or it is lost: of such looks the one that tells most per minute.</summary>
    private Proposal? LookedAt(Proposal first, IEnumerable<Proposal> ordered, List<Candidate> checks)
    {
        if (first.Step.Kind != StepKind.Check || checks[first.Step.Index] is not { Check.Swap: not null } exchange || !LayoutPlaces.TryCylinders(layout, exchange.Place, out var here))
        {
            return null;
        }

        return ordered.Where(p => p.Step.Kind == StepKind.Check && Looks(checks[p.Step.Index]))
            .MaxBy(p => Bits(checks[p.Step.Index]) / effort.Minutes(checks[p.Step.Index].Check, checks[p.Step.Index].SetUp));

        bool Looks(Candidate look) => look.Check.Likelihood.Aspect?.Split('.')[0] is { } part && look.Check.Handles.Contains(part) && exchange.Check.Handles.Contains(part)
            && (look.Place == exchange.With || (LayoutPlaces.TryCylinders(layout, look.Place, out var there) && here.All(there.Contains)));
    }

    private IEnumerable<Proposal> Ordered(IReadOnlyList<Proposal> ranked, List<Candidate> checks)
    {
        var told = new Dictionary<int, double>();
        var least = ranked.Count == 0 ? 0 : ranked[0].ExpectedCostToFinish;
        var asGood = least * SameCost;
        var left = ranked.Select(Bounded).OrderBy(p => p.Step.Kind == StepKind.Action && p.ProbabilityOfHelp < SeldomDrawn).ThenBy(p => p.ExpectedCostToFinish).ToList();
        if (ranked is [{ Step.Kind: StepKind.Action } mend, ..] && MostTelling(p => p.ExpectedCostToFinish <= asGood && Bits(p.Step.Index) >= WorthAsking) is { } ask)
        {
            left.Remove(ask);
            left.Remove(mend);
            yield return ask;
            yield return mend;
        }

        // What a job is handed on for is put to the test before, by what may overturn it.
        if (ranked is [{ Step.Kind: StepKind.Refer }, ..]
            && left.Where(p => p.Step.Kind == StepKind.Check && MayOverturn(checks[p.Step.Index])).MaxBy(p => Told(outcomes.Chances(checks[p.Step.Index]), checks[p.Step.Index].Outcomes.Names.Count, Likeliest)) is { } before)
        {
            left.Remove(before);
            yield return before;
        }

        var (first, cheapest) = (left.Count == ranked.Count, left.Count > 0 ? left[0] : null);
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

            // What was cheapest and gave way to a check as cheap comes next.
            if (first && cheapest is not null && left.Remove(cheapest))
            {
                yield return cheapest;
            }

            first = false;
        }

        // A check can be put before any other plan, so it never costs more than that and its own.
        Proposal Bounded(Proposal p) => p.Step.Kind != StepKind.Check || p.CostNow > Trifle * least || p.ExpectedCostToFinish <= least + p.CostNow || Bits(p.Step.Index) < WorthAsking
            ? p : p with { ExpectedCostToFinish = least + p.CostNow };

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

        double Bits(int check) => told.TryGetValue(check, out var known) ? known : told[check] = this.Bits(checks[check]);
    }

    /// <summary>
    /// For each engine the number of what must be mended; engines in which the same must be mended share one. What was
    /// drawn a few times only is one among the rest, 0: of single draws any check seems to tell something.
    /// </summary>
    private int[] Ends => field ??= Numbered();

    private int[] Numbered()
    {
        var needed = Enumerable.Range(0, outcomes.Count).Select(e => string.Join(',', outcomes.Needed(e))).ToArray();
        var weights = new Dictionary<string, double>();
        for (var e = 0; e < needed.Length; e++)
        {
            weights[needed[e]] = weights.GetValueOrDefault(needed[e]) + outcomes.Weights[e];
        }

        // Rounding must not decide.
        var numbers = weights.Where(w => w.Value >= SeldomDrawn - 1e-9).Select((w, i) => (w.Key, Number: i + 1)).ToDictionary(c => c.Key, c => c.Number);
        return Array.ConvertAll(needed, n => numbers.GetValueOrDefault(n));
    }

    /// <summary>Bits that the answer of a check tells.</summary>
    private double Bits(Candidate check) => Told(outcomes.Chances(check), check.Outcomes.Names.Count, Ends);

    /// <summary>By engine 1 where that must be mended which most likely must and follows from nothing else, 0 elsewhere.</summary>
    private int[] Likeliest => field ??= repairs.Needed.SelectMany(n => n).Where(c => c != Repairs.NotHere && !repairs[c].Aspect.Aspect.Consequence)
        .CountBy(c => c).OrderByDescending(c => c.Value).Select(c => c.Key).FirstOrDefault() is var most ? [.. Enumerable.Range(0, outcomes.Count).Select(e => outcomes.Needed(e).Contains(most) ? 1 : 0)] : [];

    /// <summary>True where that is likelier than not, and after one of the check's answers no longer.</summary>
    private bool MayOverturn(Candidate check)
    {
        var (chances, answers) = (outcomes.Chances(check), check.Outcomes.Names.Count);
        var more = new double[answers];
        for (var i = 0; i < chances.Length; i++)
        {
            more[i % answers] += chances[i] * outcomes.Weights[i / answers] * (2 * Likeliest[i / answers] - 1);
        }

        return more.Sum() > 0 && more.Any(m => m < 0);
    }

    /// <summary>Bits that outcomes tell of what must be mended, given the chance of each in each drawn engine, outcomes fastest.</summary>
    public double ToldByDraws(double[] chances, int answersOf)
    {
        var engines = outcomes.Of;
        var share = Array.ConvertAll(outcomes.Weights, w => w * engines.Length);
        var byEngine = new double[share.Length * answersOf];
        for (int d = 0, i = 0; d < engines.Length; d++)
        {
            var e = engines[d];
            for (var a = 0; a < answersOf; a++, i++)
            {
                byEngine[e * answersOf + a] += chances[i] / share[e];
            }
        }

        return Told(byEngine, answersOf, Ends);
    }

    /// <summary>Bits that outcomes tell of which end it comes to.</summary>
    /// <param name="chances">Chance of each outcome in each engine, outcomes fastest.</param>
    /// <param name="answersOf">Number of outcomes.</param>
    /// <param name="ends">By engine.</param>
    private double Told(double[] chances, int answersOf, int[] ends)
    {
        var joint = new double[(ends.Max() + 1) * answersOf];
        for (int e = 0, i = 0; e < ends.Length; e++)
        {
            var (at, weight) = (ends[e] * answersOf, outcomes.Weights[e]);
            for (var a = 0; a < answersOf; a++, i++)
            {
                joint[at + a] += chances[i] * weight;
            }
        }

        var answers = new double[answersOf];
        var mended = new double[joint.Length / answersOf];
        for (var i = 0; i < joint.Length; i++)
        {
            answers[i % answersOf] += joint[i];
            mended[i / answersOf] += joint[i];
        }

        return Math.Max(0, Spread(answers) + Spread(mended) - Spread(joint));

        static double Spread(double[] chances)
        {
            var sum = 0.0;
            foreach (var p in chances)
            {
                sum -= p > 0 ? p * Math.Log2(p) : 0;
            }

            return sum;
        }
    }
}
