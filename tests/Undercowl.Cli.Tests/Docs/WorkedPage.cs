using System.Text;
using Undercowl.Cli.Tests.Fixtures;

namespace Undercowl.Cli.Tests.Docs;

/// <summary>
/// A page of docs/ with its numbers worked out afresh. In blocks marked <c>console</c> a line that begins with <c>$ </c> is
/// run and what follows it is what it said; a line with only <c>…</c> ends what is shown of it. Tables headed
/// <c>figure | value</c> hold figures by name.
/// </summary>
internal static class WorkedPage
{
    private const string More = "…";

    /// <summary>The page as it would have to read.</summary>
    /// <param name="page">The page as it reads.</param>
    /// <param name="run">Runs a command line.</param>
    /// <param name="figures">Figures by their name on the page; asked for once each, in the page's order.</param>
    public static string Worked(string page, Func<string, Ran> run, Func<string, string> figures)
    {
        var worked = new StringBuilder();
        var lines = page.TrimEnd('\n').Split('\n');
        for (var i = 0; i < lines.Length; i++)
        {
            worked.Append(lines[i]).Append('\n');
            if (lines[i] == "```console")
            {
                i = Console(lines, i + 1, run, worked);
            }
            else if (lines[i].StartsWith("| figure |", StringComparison.Ordinal))
            {
                worked.Append(lines[++i]).Append('\n');
                for (; i + 1 < lines.Length && lines[i + 1].StartsWith('|'); i++)
                {
                    var name = lines[i + 1].Split('|')[1].Trim();
                    worked.Append($"| {name} | {figures(name)} |\n");
                }
            }
        }

        return worked.ToString();
    }

    private static int Console(string[] lines, int i, Func<string, Ran> run, StringBuilder worked)
    {
        for (; lines[i] != "```"; i++)
        {
            if (!lines[i].StartsWith("$ ", StringComparison.Ordinal))
            {
                continue;
            }

            var shown = lines.Skip(i + 1).TakeWhile(l => l != "```" && !l.StartsWith("$ ", StringComparison.Ordinal)).ToArray();
            string[] said = run(lines[i][2..]).Good().Out.TrimEnd('\n').Split('\n');
            worked.Append(lines[i]).Append('\n');
            foreach (var line in shown is [.., More] ? said.Take(shown.Length - 1).Append(More) : said)
            {
                worked.Append(line).Append('\n');
            }
        }

        worked.Append("```\n");
        return i;
    }
}
