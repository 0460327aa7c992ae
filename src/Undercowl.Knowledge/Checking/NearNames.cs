namespace Undercowl.Knowledge.Checking;

/// <summary>Finds what was probably meant by a name that is not known.</summary>
public static class NearNames
{
    private const int MostListed = 12;
    private const int NearestListed = 3;

    /// <summary>"did you mean …?" when one is near, else the list of them when it is short, else the nearest of the many.</summary>
    public static string Mend(string given, IEnumerable<string> known)
    {
        ArgumentNullException.ThrowIfNull(given);
        string[] all = [.. known.Distinct().Order(StringComparer.Ordinal)];
        (string Name, int Distance)[] ranked = [.. all.Where(k => k != given).Select(k => (Name: k, Distance: Distance(given, k)))
            .OrderBy(p => p.Distance).ThenBy(p => p.Name, StringComparer.Ordinal)];
        return ranked is [var near, ..] && near.Distance <= Math.Max(1, Math.Min(given.Length, near.Name.Length) / 3) ? $"did you mean {near.Name}?"
            : all.Length == 0 ? "take it out: there are none here"
            : all.Length <= MostListed ? $"use one of: {string.Join(", ", all)}"
            : $"none is like it; the nearest of the {all.Length} there are: {string.Join(", ", ranked.Take(NearestListed).Select(p => p.Name))}";
    }

    /// <summary>Insertions, deletions, exchanges of a letter and swaps of neighbours that turn one text into the other (optimal string alignment).</summary>
    public static int Distance(string a, string b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        var d = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
        {
            for (var j = 0; j <= b.Length; j++)
            {
                if (i == 0 || j == 0)
                {
                    d[i, j] = i + j;
                    continue;
                }

                d[i, j] = Math.Min(Math.Min(d[i - 1, j], d[i, j - 1]) + 1, d[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1));
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
                }
            }
        }

        return d[a.Length, b.Length];
    }
}
