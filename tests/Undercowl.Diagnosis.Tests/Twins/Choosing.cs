namespace Undercowl.Diagnosis.Tests.Twins;

/// <summary>
/// Runs a program that draws named choices through every sequence of choices it can make: the slow, obvious way to a
/// posterior. A name drawn again in the same run gives the same state.
/// </summary>
internal sealed class Choosing : IWorld
{
    private readonly List<(string Name, int State, double[] Chances)> _path = [];
    private readonly Dictionary<string, int> _drawn = [];
    private int _at;

    /// <summary>Chance of this run's choices, times the likelihoods multiplied so far.</summary>
    public double Weight { get; private set; }

    public int Draw(string name, double[] chances)
    {
        if (_drawn.TryGetValue(name, out var state))
        {
            return state;
        }

        if (_at == _path.Count)
        {
            _path.Add((name, First(chances, 0), chances));
        }

        state = _path[_at++].State;
        Weight *= chances[state];
        return _drawn[name] = state;
    }

    public void Multiply(double likelihood) => Weight *= likelihood;

    /// <summary>Calls <paramref name="program"/> once for each sequence of choices that is possible.</summary>
    /// <returns>How many there are.</returns>
    public long All(Action program)
    {
        var runs = 0L;
        do
        {
            _drawn.Clear();
            _at = 0;
            Weight = 1;
            program();
            runs++;
        }
        while (Advance());
        return runs;
    }

    private bool Advance()
    {
        while (_path.Count > 0)
        {
            var (name, state, chances) = _path[^1];
            _path.RemoveAt(_path.Count - 1);
            var next = First(chances, state + 1);
            if (next < chances.Length)
            {
                _path.Add((name, next, chances));
                return true;
            }
        }

        return false;
    }

    private static int First(double[] chances, int from)
    {
        while (from < chances.Length && chances[from] == 0)
        {
            from++;
        }

        return from;
    }
}
