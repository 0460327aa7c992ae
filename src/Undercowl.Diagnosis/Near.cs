namespace Undercowl.Diagnosis;

/// <summary>Finds what was probably meant by a name that is not known.</summary>
public static class Near
{
    /// <summary>"Did you mean …?", or the list when nothing is near and the list is short.</summary>
    public static string Mend(string given, IEnumerable<string> known)
    {
        string[] all = [.. known.Distinct().Order(StringComparer.Ordinal)];
        var near = all.Select(k => (Name: k, Distance: Distance(given, k))).Where(p => p.Distance <= Math.Max(2, given.Length / 3)).OrderBy(p => p.Distance).FirstOrDefault();
        return near.Name is not null ? $"Did you mean {near.Name}?" : $"Use one of: {string.Join(", ", all.Take(40))}{(all.Length > 40 ? ", …" : "")}.";
    }

    /// <summary>Number of insertions, deletions and exchanges of letters that turn one text into the other (Levenshtein 1966).</summary>
    public static int Distance(string a, string b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var up = row[j];
                row[j] = Math.Min(Math.Min(row[j], row[j - 1]) + 1, diagonal + (a[i - 1] == b[j - 1] ? 0 : 1));
                diagonal = up;
            }
        }

        return row[^1];
    }
}
