using System.Globalization;

namespace Undercowl.Inference.Tests.Speed;

/// <summary>
/// Generates networks of the shape that hurts: lanes of rare private faults behind shared outputs, worst-of chains, a fold
/// over the lanes, and several set-ups that share the faults but cut some influences, trade private nodes between lanes,
/// put in fresh ones, and let intermittent faults show on one occasion and not on another. Copies treated alike are one
/// node. The readings come from one state drawn from the network itself, with noise.
/// </summary>
internal sealed class LaneNetwork
{
    public const int Levels = 4;

    private readonly LaneShape _shape;
    private readonly Random _random;
    private readonly NetworkBuilder _builder = new();
    private readonly Dictionary<string, int> _nodes = [];
    private readonly Dictionary<string, int[]> _levels = [];
    private readonly int[][] _outputs;
    private readonly int[] _folds;

    public LaneNetwork(LaneShape shape)
    {
        _shape = shape;
        _random = new Random(shape.Seed);
        _outputs = new int[shape.SetUps][];
        _folds = new int[shape.SetUps];
        for (var s = 0; s < shape.SetUps; s++)
            MakeSetUp(s);
        Network = _builder.Build();
        Evidence = new Evidence(Network);
        AddReadings();
    }

    public Network Network { get; }

    public Evidence Evidence { get; }

    public int Roots { get; private set; }

    private string Treatment(int setUp, string root)
    {
        // Which version of the root acts in this set-up, and on which occasion when it comes and goes.
        var version = setUp >= 5 && (root is "s7" or "1.0") || (setUp >= 3 && root == "6.3") ? "'" : "";
        return _shape.Replacements ? root + version : root;
    }

    private static bool Cut(int setUp, string root)
    {
        // Every later set-up leaves out two shared influences and one private place in all lanes.
        if (setUp == 0)
            return false;
        return root.StartsWith('s')
            ? int.Parse(root.AsSpan(1), CultureInfo.InvariantCulture) % 20 == setUp * 2
            : root.EndsWith($".{setUp + 4}", StringComparison.Ordinal);
    }

    private int Lane(int setUp, int lane, int place)
    {
        // Three swaps that chain four lanes: 2 with 3, then 3 with 4, then 4 with 5.
        if (!_shape.Swaps)
            return lane;
        (int From, int Place, int Left)[] swaps = [(1, 2, 2), (3, 3, 3), (6, 1, 4)];
        foreach (var (from, swappedPlace, left) in swaps)
        {
            if (setUp >= from && place == swappedPlace && (lane == left || lane == left + 1))
                return lane == left ? left + 1 : left;
        }

        return lane;
    }

    private int Root(string name, bool intermittent)
    {
        if (_nodes.TryGetValue(name, out var node))
            return node;
        Roots++;
        var states = intermittent ? 3 : _random.Next(2, 5);
        var prior = new double[states];
        var faulty = Math.Pow(10, -3 + 1.7 * _random.NextDouble());
        prior[0] = 1 - faulty;
        for (var i = 1; i < states; i++)
            prior[i] = faulty / (states - 1);
        _levels[name] = states switch { 2 => [0, _random.Next(1, 4)], 3 => [0, _random.Next(1, 3), 3], _ => [0, 1, 2, 3] };
        return _nodes[name] = _builder.Add(name, states, [], prior);
    }

    private int Gate(string name, int before, int beforeStates, string root, int setUp)
    {
        var kind = Treatment(setUp, root);
        var intermittent = _shape.Intermittents && root is "s3" or "s25";
        var node = Root(kind, intermittent);
        var level = _levels[kind];
        var parents = new List<int>();
        if (before >= 0)
            parents.Add(before);
        parents.Add(node);
        var key = name + "/" + kind;
        if (intermittent)
        {
            var occasion = setUp / 3;
            key += "@" + occasion;
            parents.Add(Activation(root, occasion));
        }

        if (_nodes.TryGetValue(key, out var gate))
            return gate;
        var function = new List<int>();
        for (var b = 0; b < (before >= 0 ? beforeStates : 1); b++)
        {
            for (var r = 0; r < level.Length; r++)
            {
                for (var a = 0; a < (intermittent ? 2 : 1); a++)
                    function.Add(Math.Max(b, intermittent && r == 1 && a == 0 ? 0 : level[r]));
            }
        }

        return _nodes[key] = _builder.AddFunction(key, Levels, [.. parents], [.. function]);
    }

    private int Activation(string root, int occasion)
    {
        var name = $"{root} shows on {occasion}";
        if (!_nodes.TryGetValue(name, out var node))
            _nodes[name] = node = _builder.Add(name, 2, [], [0.5, 0.5]);
        return node;
    }

    /// <summary>A chain of worst-of gates; the name of each gate is what went into it, so equal chains are one.</summary>
    private int Chain(int setUp, IEnumerable<string> roots, int before, string name)
    {
        foreach (var root in roots)
        {
            if (Cut(setUp, root))
                continue;
            before = Gate(name, before, Levels, root, setUp);
            name = NameOf(before);
        }

        return before;
    }

    private string NameOf(int node) => _nodes.First(p => p.Value == node).Key;

    private int Worst(int a, int b)
    {
        var key = $"worst({a},{b})";
        if (_nodes.TryGetValue(key, out var node))
            return node;
        var function = new int[Levels * Levels];
        for (var i = 0; i < function.Length; i++)
            function[i] = Math.Max(i / Levels, i % Levels);
        return _nodes[key] = _builder.AddFunction(key, Levels, [a, b], function);
    }

    private void MakeSetUp(int s)
    {
        var whole = Chain(s, Enumerable.Range(0, 16).Select(i => $"s{i}"), -1, "whole");
        var sides = new int[2];
        for (var side = 0; side < 2; side++)
            sides[side] = Worst(whole, Chain(s, Enumerable.Range(16 + 12 * side, 12).Select(i => $"s{i}"), -1, "side"));
        _outputs[s] = new int[_shape.Lanes];
        for (var lane = 0; lane < _shape.Lanes; lane++)
        {
            var roots = Enumerable.Range(0, _shape.Private).Select(p => $"{Lane(s, lane, p)}.{p}");
            var shared = sides[lane * 2 / _shape.Lanes];
            _outputs[s][lane] = _shape.SharedFirst
                ? Chain(s, roots, shared, "after " + shared)
                : Worst(shared, Chain(s, roots, -1, "private"));
        }

        var fold = -1;
        foreach (var output in _outputs[s])
            fold = Fold(fold, output);
        _folds[s] = fold;
    }

    private int Fold(int before, int output)
    {
        var key = $"fold({before},{output})";
        if (_nodes.TryGetValue(key, out var node))
            return node;
        // all, some dead, many dead, none; a lane at level 2 or 3 is dead.
        int[] alive = [0, 1, 2, 2], dead = [1, 2, 2, 3];
        if (before < 0)
            return _nodes[key] = _builder.AddFunction(key, 4, [output], [0, 0, 3, 3]);
        var function = new int[4 * Levels];
        for (var i = 0; i < function.Length; i++)
            function[i] = i % Levels < 2 ? alive[i / Levels] : dead[i / Levels];
        return _nodes[key] = _builder.AddFunction(key, 4, [before, output], function);
    }

    private void AddReadings()
    {
        var truth = new Evidence(Network);
        truth.Observe(_nodes["2.2"], Network.States(_nodes["2.2"]) - 1);
        var states = Elimination.Run(truth, new EliminationOptions { RowBudget = 20_000 }).Sample(7, 1);
        for (var s = 0; s < _shape.SetUps; s++)
        {
            if (s < _shape.FoldReadings)
            {
                Read(_folds[s], states[_folds[s]], $"engine {s}");
                continue;
            }

            for (var lane = 0; lane < _shape.LaneReadings; lane++)
                Read(_outputs[s][lane], states[_outputs[s][lane]], $"lane {lane} in {s}");
        }
    }

    private void Read(int node, int state, string label)
    {
        var likelihood = new double[Network.States(node)];
        for (var i = 0; i < likelihood.Length; i++)
            likelihood[i] = i == state ? 0.9 : 0.03 + 0.01 * i;
        Evidence.Likelihood(node, likelihood, label);
    }
}

internal sealed record LaneShape
{
    public int Seed { get; init; } = 1;

    public int Lanes { get; init; } = 8;

    public int Private { get; init; } = 14;

    public int SetUps { get; init; } = 8;

    /// <summary>The first so many set-ups have a reading of the fold alone; the others read lanes.</summary>
    public int FoldReadings { get; init; } = 4;

    public int LaneReadings { get; init; } = 8;

    public bool Swaps { get; init; } = true;

    public bool Replacements { get; init; } = true;

    public bool Intermittents { get; init; } = true;

    /// <summary>Private faults join the chain after the shared output rather than among themselves first.</summary>
    public bool SharedFirst { get; init; }
}
