using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Engine;
using Undercowl.Inference;

namespace Undercowl.Diagnosis.Beliefs;

/// <summary>The posterior of one job: what holds of each aspect as found and now.</summary>
internal sealed class Belief
{
    /// <summary>An explanation fixes the causes of at least this probability, and no more of them than inference allows.</summary>
    private const double WorthExplaining = 0.01;

    private const int ExplanationsShown = 5;

    private const long ExplanationRows = 2_000_000;

    private readonly JobNetwork _network;

    private Belief(JobNetwork network)
    {
        _network = network;
        Posterior = Elimination.Run(network.Evidence(), network.Options with { Wanted = network.Wanted() });
    }

    /// <summary>The belief of a job; of the job without ties by common causes, where with them it has an error bound that must be told.</summary>
    public static Belief Of(JobNetwork network)
    {
        if (network.Untied() is not { } untied)
        {
            return new Belief(network);
        }

        try
        {
            var belief = new Belief(network);
            return belief.Posterior.Approximate ? new Belief(untied) : belief;
        }
        catch (InferenceException e) when (e.Fault == InferenceFault.RowBudget)
        {
            return new Belief(untied);
        }
    }

    /// <summary>The job as it was summed.</summary>
    public JobNetwork Network => _network;

    public Posterior Posterior { get; }

    public double AsFound(AspectInstance aspect, int state) => Posterior.Marginal(_network.Conditions.First(aspect))[state];

    public double Now(AspectInstance aspect, int state) => Posterior.Marginal(_network.Conditions.NodeOf(_network.Now, aspect))[state];

    public IReadOnlyList<CauseBelief> Causes()
    {
        var causes = new List<CauseBelief>();
        foreach (var aspect in _network.Model.Aspects)
        {
            var asFound = Posterior.Marginal(_network.Conditions.First(aspect));
            var now = Posterior.Marginal(_network.Conditions.NodeOf(_network.Now, aspect));
            for (var s = 1; s < aspect.StateNames.Length; s++)
            {
                causes.Add(Describe(aspect, s, asFound[s], now[s]));
            }
        }

        // What differs by rounding only is equal, so that the order does not depend on the order of sums.
        return [.. causes.OrderByDescending(c => Math.Round(c.Now, 12)).ThenByDescending(c => Math.Round(c.AsFound, 12)).ThenBy(c => c.Cause, StringComparer.Ordinal)];
    }

    /// <summary>What may have befallen the engine, most probable first.</summary>
    public IReadOnlyList<CommonCauseBelief> CommonCauses() =>
    [
        .. _network.CommonCauses
            .Select(c => new CommonCauseBelief(c.Cause.Id, c.Cause.Name, c.Ties ? Posterior.Marginal(_network.Conditions.Befell(c.Cause))[1] : c.After, c.Cause.Prior))
            .OrderByDescending(c => Math.Round(c.Probability, 12)).ThenBy(c => c.Id, StringComparer.Ordinal),
    ];

    /// <summary>Joint explanations over the causes that bear on the complaint.</summary>
    public Explained Explanations()
    {
        var bearing = Bearing();
        AspectInstance[] worth = [.. _network.Model.Aspects
            .Where(a => !a.Aspect.Consequence && bearing.Contains(_network.Conditions.First(a)))
            .Select(a => (Aspect: a, Fault: 1 - AsFound(a, 0)))
            .Where(p => p.Fault >= WorthExplaining)
            .OrderByDescending(p => p.Fault).ThenBy(p => p.Aspect.Index)
            .Select(p => p.Aspect)];
        if (Posterior.Approximate)
        {
            return Explained.None("Which causes hold together is not worked out where the belief itself is only known within a bound.");
        }

        // Fixing many causes at once keeps their joint states apart; where that does not fit, fewer are explained.
        for (var count = Math.Min(worth.Length, MostProbable.MaximumChosen); count > 0; count = count * 2 / 3)
        {
            var fixedNow = worth.AsSpan(0, count).ToArray();
            try
            {
                int[] nodes = [.. fixedNow.Select(_network.Conditions.First)];
                var found = MostProbable.Explanations(Posterior.Evidence, nodes, ExplanationsShown, _network.Options with { RowBudget = ExplanationRows });
                return new Explained(
                    [.. found.Select(e => new JointExplanation(
                        [.. fixedNow.Select((a, i) => e.States[i] == 0 ? null : a.CauseId(e.States[i])).OfType<string>()], e.Probability))],
                    found.Sum(e => e.Probability),
                    count,
                    count == worth.Length ? null : $"Which causes hold together is worked out for the {count} likeliest of {worth.Length} worth it; the others are summed out.");
            }
            catch (InferenceException e) when (e.Fault == InferenceFault.RowBudget)
            {
            }
        }

        return Explained.None(worth.Length == 0 ? null : "Which causes hold together is not worked out: the sums do not fit.");
    }

    private static CauseBelief Describe(AspectInstance aspect, int state, double asFound, double now)
    {
        var condition = aspect.Conditions[state - 1];
        var output = aspect.Position < 0 ? null : aspect.PartId[(aspect.PartId.LastIndexOf('/') + 1)..];
        return new CauseBelief(
            aspect.CauseId(state),
            aspect.Part.Kind.Id,
            aspect.Part.Place,
            output,
            aspect.Aspect.Id,
            condition.Id,
            Words.Cause(aspect, state),
            asFound,
            now,
            aspect.Prior[state],
            aspect.Aspect.Consequence,
            condition.Warning);
    }

    /// <summary>The nodes that lead to what was complained of.</summary>
    private HashSet<int> Bearing()
    {
        var found = new HashSet<int>();
        foreach (var signal in _network.ComplaintSignals)
        {
            Collect(signal.Node);
        }

        return found;

        void Collect(int node)
        {
            if (node < 0 || !found.Add(node))
            {
                return;
            }

            foreach (var parent in _network.Graph[node].Parents)
            {
                Collect(parent);
            }
        }
    }
}

/// <summary>Joint explanations, most probable first.</summary>
/// <param name="Found">The explanations.</param>
/// <param name="Coverage">Probability (0 to 1) that one of them is right.</param>
/// <param name="Considered">How many aspects they tell apart.</param>
/// <param name="LeftOut">Why they are not all there; null when they are.</param>
internal sealed record Explained(IReadOnlyList<JointExplanation> Found, double Coverage, int Considered, string? LeftOut)
{
    public static Explained None(string? why) => new([], 0, 0, why);
}
