namespace Undercowl.Diagnosis.Planning;

/// <summary>
/// The drawn engines as the planner sees them: those in which the same must be mended and every check would answer alike are one, with
/// the weight of all. And what each check would answer in each, worked out once.
/// </summary>
internal sealed class DrawnOutcomes
{
    private readonly Dictionary<Candidate, double[]> _chances = new(ReferenceEqualityComparer.Instance);
    private readonly ForwardRun _run;
    private readonly Repairs _repairs;
    private readonly int[] _first;

    /// <param name="run">The draws.</param>
    /// <param name="repairs">What must be mended in each.</param>
    /// <param name="checks">The checks by whose answers they are told apart; no other may be asked about.</param>
    public DrawnOutcomes(ForwardRun run, Repairs repairs, IReadOnlyList<Candidate> checks)
    {
        (_run, _repairs) = (run, repairs);
        run.Extend();
        var kinds = new Dictionary<string, int>();
        // Draws that are alike share one array.
        var kindOf = new Dictionary<int[], int>(ReferenceEqualityComparer.Instance);
        Of = Array.ConvertAll(repairs.Needed, needed => kindOf.TryGetValue(needed, out var known) ? known : kindOf[needed] = Kind(string.Join(',', needed)));
        var count = kinds.Count;
        var split = new HashSet<(int Node, int Tool, int Rows, string Map)>();
        foreach (var check in checks)
        {
            // What two checks both read tells nothing apart the second time.
            if (split.Add((check.Signal.Node, check.Tool, check.Outcomes.Rows.Length, string.Join(',', check.Signal.Map))))
            {
                count = Split(check, count);
            }
        }

        Weights = new double[count];
        _first = new int[count];
        for (var d = Of.Length - 1; d >= 0; d--)
        {
            Weights[Of[d]] += 1.0 / run.Count;
            _first[Of[d]] = d;
        }

        int Kind(string needed) => kinds.TryGetValue(needed, out var known) ? known : kinds[needed] = kinds.Count;
    }

    /// <summary>By draw: the number of the engine that stands for it.</summary>
    public int[] Of { get; }

    /// <summary>Number of engines told apart.</summary>
    public int Count => Weights.Length;

    /// <summary>The share of the draws that each stands for; they sum to 1.</summary>
    public double[] Weights { get; }

    /// <summary>The components that must be mended in an engine.</summary>
    public int[] Needed(int engine) => _repairs.Needed[_first[engine]];

    /// <summary>Of all these checks, one after another.</summary>
    public double[] All(List<Candidate> checks)
    {
        var all = new double[checks.Sum(c => Chances(c).Length)];
        var start = 0;
        foreach (var check in checks)
        {
            Chances(check).CopyTo(all, start);
            start += Chances(check).Length;
        }

        return all;
    }

    /// <summary>Chance of each outcome in each engine, outcomes fastest.</summary>
    public double[] Chances(Candidate candidate)
    {
        if (_chances.TryGetValue(candidate, out var known))
        {
            return known;
        }

        var outcomes = candidate.Outcomes.Names.Count;
        var chances = new double[Count * outcomes];
        for (var e = 0; e < Count; e++)
        {
            candidate.Outcomes.Rows[Row(candidate, _first[e])].CopyTo(chances, e * outcomes);
        }

        return _chances[candidate] = chances;
    }

    /// <summary>Tells engines apart by the rows of one more check; how many there are then.</summary>
    private int Split(Candidate check, int before)
    {
        var rows = check.Outcomes.Rows.Length;
        var numbers = new int[before * rows];
        var (of, map, states, count) = (Of, check.Signal.Map, check.Signal.IsConstant ? null : _run.States(check.Signal.Node), 0);
        var tools = check.Tool < 0 ? null : _run.States(check.Tool);
        for (var d = 0; d < of.Length; d++)
        {
            var row = tools is not null && check.ToolReadsWorst[tools[d]] ? rows - 1 : map[states is null ? 0 : states[d]];
            // One more than the number, so that 0 is none yet.
            ref var number = ref numbers[of[d] * rows + row];
            of[d] = (number == 0 ? number = ++count : number) - 1;
        }

        return count;
    }

    /// <summary>The row of the check's table that holds in a draw.</summary>
    private int Row(Candidate candidate, int draw) =>
        candidate.Tool >= 0 && candidate.ToolReadsWorst[_run.State(draw, candidate.Tool)] ? candidate.Outcomes.Rows.Length - 1 : _run.Level(draw, candidate.Signal);
}
