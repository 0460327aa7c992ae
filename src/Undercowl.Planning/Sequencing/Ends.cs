namespace Undercowl.Planning.Sequencing;

/// <summary>What must be mended, as a number by group: groups whose components the same actions mend equally well share one.</summary>
internal sealed class Ends
{
    private readonly RepairModel model;

    internal Ends(RepairModel model)
    {
        this.model = model;
        int[] likeness = Alike();
        OfGroup = new int[model.Groups];
        var numbers = new Dictionary<string, int>(StringComparer.Ordinal);
        for (int g = 0; g < model.Groups; g++)
        {
            int[] classes = Classes(g, likeness);
            string key = string.Join(',', classes);
            if (numbers.TryGetValue(key, out OfGroup[g])) continue;
            OfGroup[g] = numbers[key] = numbers.Count;
            Components.Add(classes);
        }
    }

    internal int[] OfGroup { get; }

    /// <summary>By number: what must be mended, one component for all that are like it.</summary>
    internal List<int[]> Components { get; } = [];

    /// <summary>For each component the first one that the same actions mend equally well.</summary>
    private int[] Alike()
    {
        int components = model.Problem.Hypotheses.Components;
        var alike = new int[components];
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        for (int c = 0; c < components; c++)
        {
            int from = model.MendedBy.Start[c], to = model.MendedBy.Start[c + 1];
            string key = string.Join(',', Enumerable.Range(from, to - from).Select(i => FormattableString.Invariant($"{model.MendedBy.Entry[i]}:{model.MendedBy.Value[i]:R}")));
            alike[c] = seen.TryGetValue(key, out int first) ? first : seen[key] = c;
        }

        return alike;
    }

    private int[] Classes(int group, int[] likeness)
    {
        var found = new SortedSet<int>();
        foreach (int c in model.Broken[group]) found.Add(likeness[c]);
        return [.. found];
    }
}
