using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Beliefs;
using Undercowl.Diagnosis.History;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Safety;

/// <summary>Whether the repair is proven: the complaint's own test read good after the last remedy, nothing is left undone, and it will last.</summary>
internal static class ProofOf
{
    public const double Wanted = 0.95;

    public static ProofAnswer Of(JobNetwork network, Belief belief, StandingEngine standing, IReadOnlyList<InterlockStatus> interlocks)
    {
        var missing = new List<string>();
        var (healthy, bound) = (1.0, 0.0);
        foreach (var said in network.Projection.Complaints)
        {
            var complaint = network.Model.Knowledge.ComplaintOf(said.Id);
            if (complaint is null)
            {
                missing.Add($"The complaint {said.Id} is not known today: prove it by hand and sign off as unproven.");
                continue;
            }

            var setUp = SetUpResolution.Of(said, complaint);
            if (!Shown(network, complaint, setUp))
            {
                var test = network.Model.Knowledge.Checks.First(c => c.Id == complaint.SystemTest);
                missing.Add($"No good reading of \"{test.Name}\" in the complaint's own set-up{SetUpWords(setUp)} after the last remedy: do it and record it.");
            }

            var (now, within) = Healthy(network, belief, complaint, setUp);
            (healthy, bound) = (Math.Min(healthy, now), Math.Max(bound, within));
        }

        if (healthy < Wanted)
        {
            var doubt = belief.Causes().FirstOrDefault(c => !c.Consequence);
            missing.Add($"The engine is not yet likely enough to stay right ({healthy:0.00}, wanted {Wanted:0.00})"
                + (doubt is null ? "." : $": most in doubt is {doubt.Name}. Provoke it, or mend it."));
        }

        missing.AddRange(new ToShow(network, belief).Missing.Select(p => NotShown(network, p)));
        missing.AddRange(standing.Restore.Select(r => $"Still to undo: {r.What}. {r.How}"));
        missing.AddRange(interlocks.Where(i => !i.Clear).Select(i => $"Not clear: {i.Reason}"));
        return new ProofAnswer(missing.Count == 0, healthy, bound, missing);
    }

    /// <summary>The belief with what the first complaint is proven by carried along, so that one sum gives both.</summary>
    public static Belief Carrying(JobNetwork network) =>
        network.Projection.Complaints.Select(said => (Said: said, Complaint: network.Model.Knowledge.ComplaintOf(said.Id)))
            .FirstOrDefault(c => c.Complaint is not null) is { Complaint: { } complaint, Said: var first }
            ? Belief.Of(new JobNetwork(network.Model, network.Projection, (complaint.Quantity, SetUpResolution.Of(first, complaint))))
            : Belief.Of(network);

    /// <summary>Probability that the complaint's quantity is at a healthy level now, all faults that come and go showing, and by how much it may be off at most.</summary>
    private static (double Now, double ErrorBound) Healthy(JobNetwork network, Belief belief, Knowledge.Complaint complaint, IReadOnlyDictionary<string, string> setUp)
    {
        var carrying = belief.Network.Asks(complaint.Quantity, setUp) ? belief : Belief.Of(new JobNetwork(network.Model, network.Projection, (complaint.Quantity, setUp)));
        var signal = carrying.Network.Asked;
        var quantity = network.Model.Quantity(complaint.Quantity);
        if (signal.IsConstant)
        {
            return (complaint.Healthy.Contains(quantity.Levels[signal.Level]) ? 1 : 0, 0);
        }

        var marginal = carrying.Posterior.Marginal(signal.Node);
        var sum = 0.0;
        for (var s = 0; s < signal.Map.Length; s++)
        {
            sum += complaint.Healthy.Contains(quantity.Levels[signal.Map[s]]) ? marginal[s] : 0;
        }

        return (sum, carrying.Posterior.ErrorBound);
    }

    /// <summary>Whether the complaint's own test, in the complaint's own set-up, has read good and nothing has been done since.</summary>
    public static bool Shown(JobNetwork network, Knowledge.Complaint complaint, IReadOnlyDictionary<string, string> setUp) =>
        ToShow.Good(network, [complaint.SystemTest], setUp.ToDictionary(s => s.Key, s => new OneOrMore([s.Value])), complaint.Good).Count > 0;

    private static string NotShown(JobNetwork network, ProofItem item)
    {
        var checks = item.Checks.Select(id => network.Model.Checks.FirstOrDefault(c => c.Id == id)?.Name).OfType<string>();
        return $"Not shown since the last deed: {item.Name}. Record \"{string.Join("\" or \"", checks)}\".";
    }

    private static string SetUpWords(IReadOnlyDictionary<string, string> setUp) =>
        setUp.Count == 0 ? "" : $" ({string.Join(", ", setUp.Select(p => $"{p.Key} {p.Value}"))})";
}
