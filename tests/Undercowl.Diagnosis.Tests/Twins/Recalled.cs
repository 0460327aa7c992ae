namespace Undercowl.Diagnosis.Tests.Twins;

/// <summary>
/// Draws through to a world and remembers what followed from which draws: a program that draws the same again comes to
/// the same level again, and need not be run. Makes the slow way bearable; it knows nothing of what the program means.
/// </summary>
internal sealed class Recalled(IWorld world)
{
    private readonly List<List<(string Name, double[] Chances, int State)>> _underWay = [];

    public int Draw(string name, double[] chances)
    {
        var state = world.Draw(name, chances);
        foreach (var trace in _underWay)
        {
            if (!trace.Exists(t => ReferenceEquals(t.Name, name) || t.Name == name))
            {
                trace.Add((name, chances, state));
            }
        }

        return state;
    }

    /// <summary>What <paramref name="program"/> gives in the present world; <paramref name="known"/> is its own memory.</summary>
    public int Of(Memory known, Func<int> program)
    {
        var at = known;
        while (at.Next is { } next)
        {
            var state = Draw(at.Name, at.Chances);
            at = next[state] ??= new Memory();
        }

        if (at.Level >= 0)
        {
            return at.Level;
        }

        var trace = new List<(string Name, double[] Chances, int State)>();
        _underWay.Add(trace);
        var level = program();
        _underWay.RemoveAt(_underWay.Count - 1);
        at = known;
        foreach (var (name, chances, state) in trace)
        {
            if (at.Next is null)
            {
                (at.Name, at.Chances, at.Next) = (name, chances, new Memory?[chances.Length]);
            }

            at = at.Next[state] ??= new Memory();
        }

        return at.Level = level;
    }

    /// <summary>A tree of draws with the level at its leaves.</summary>
    internal sealed class Memory
    {
        public string Name { get; set; } = "";

        public double[] Chances { get; set; } = [];

        public Memory?[]? Next { get; set; }

        public int Level { get; set; } = -1;
    }
}
