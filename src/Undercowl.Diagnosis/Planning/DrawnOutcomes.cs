namespace Undercowl.Diagnosis.Planning;

/// <summary>What each check would answer in each drawn engine; worked out once.</summary>
internal sealed class DrawnOutcomes(ForwardRun run)
{
    private readonly Dictionary<Candidate, double[]> _chances = new(ReferenceEqualityComparer.Instance);

    /// <summary>Number of drawn engines.</summary>
    public int Count => run.Count;

    /// <summary>Of all these checks, one after another.</summary>
    public double[] All(List<Candidate> checks)
    {
        var all = new double[checks.Sum(c => Of(c).Length)];
        var start = 0;
        foreach (var check in checks)
        {
            Of(check).CopyTo(all, start);
            start += Of(check).Length;
        }

        return all;
    }

    /// <summary>Chance of each outcome in each drawn engine, outcomes fastest.</summary>
    public double[] Of(Candidate candidate)
    {
        if (_chances.TryGetValue(candidate, out var known))
        {
            return known;
        }

        var outcomes = candidate.Outcomes.Names.Count;
        var chances = new double[run.Count * outcomes];
        for (var d = 0; d < run.Count; d++)
        {
            var lost = candidate.Tool >= 0 && candidate.ToolReadsWorst[run.State(d, candidate.Tool)];
            candidate.Outcomes.Rows[lost ? ^1 : run.Level(d, candidate.Signal)].CopyTo(chances, d * outcomes);
        }

        return _chances[candidate] = chances;
    }
}
