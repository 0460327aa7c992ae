using System.Text;

namespace Undercowl.App.Desk;

/// <summary>Takes a text that holds several jobs apart. A job's lines begin with its opening entry, as every log in canonical order does.</summary>
internal static class JobTexts
{
    private const string Opening = "\"kind\":\"opened\"";

    public static IEnumerable<string> Apart(string text)
    {
        var job = new StringBuilder();
        foreach (var line in text.Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Contains(Opening, StringComparison.Ordinal) && job.Length > 0)
            {
                yield return job.ToString();
                job.Clear();
            }

            job.Append(line.TrimEnd('\r')).Append('\n');
        }

        if (job.Length > 0)
        {
            yield return job.ToString();
        }
    }
}
