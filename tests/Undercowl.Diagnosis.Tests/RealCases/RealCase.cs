using Undercowl.Diagnosis.Tests.Fixtures;
using Undercowl.Jobs;

namespace Undercowl.Diagnosis.Tests.RealCases;

/// <summary>
/// A published, resolved repair as a job: what came in, what is stated to have been at fault, and the entries in the account's order, written as they
/// are typed at a terminal. Lines that begin with <c>#</c> are the account in our own words.
/// </summary>
internal sealed class RealCase
{
    private RealCase(string id, string[] lines)
    {
        Id = id;
        string Head(string word) => lines.FirstOrDefault(l => l.StartsWith(word + " ", StringComparison.Ordinal))?[(word.Length + 1)..] ?? "";
        Account = [.. lines.Where(l => l.StartsWith('#')).Select(l => l[1..].Trim())];
        (Layout, Complaint, Miss) = (Head("layout"), Head("complaint"), Head("miss"));
        Stated = Head("stated").Split(' ');
        Besides = Head("besides").Split(' ', StringSplitOptions.RemoveEmptyEntries);
        Entries = [.. lines.Where(l => l.Split(' ')[0] is "record" or "swap" or "remedy" or "intake")];
    }

    public static string[] Ids { get; } = [.. Directory.GetFiles(Repository.PathOf("tests/Undercowl.Diagnosis.Tests/RealCases"), "case-*.txt").Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal)];

    public string Id { get; }

    public IReadOnlyList<string> Account { get; }

    public string Layout { get; }

    public string Complaint { get; }

    /// <summary>The causes that the account names, as one when it does not tell them apart; <c>*</c> stands for any text.</summary>
    public string[] Stated { get; }

    /// <summary>Other faults that the account names besides.</summary>
    public string[] Besides { get; }

    /// <summary>Why it misses, when it does.</summary>
    public string Miss { get; }

    public IReadOnlyList<string> Entries { get; }

    public static RealCase Read(string id) => new(id, Repository.Read($"tests/Undercowl.Diagnosis.Tests/RealCases/{id}.txt").TrimEnd('\n').Split('\n'));

    /// <summary>The job with its entries, each announced before it is recorded.</summary>
    public Story Told(Action<Story, string>? before = null)
    {
        var story = Shop.Story(Layout, Complaint);
        foreach (var entry in Entries)
        {
            before?.Invoke(story, entry);
            Record(story, entry);
        }

        return story;
    }

    private static void Record(Story story, string entry)
    {
        var words = new List<string>();
        var options = new Dictionary<string, string>();
        var setUp = new Dictionary<string, string>();
        string[] typed = entry.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        for (var i = 0; i < typed.Length; i++)
        {
            if (typed[i] == "--set-up")
            {
                string[] pair = typed[++i].Split('=');
                setUp.Add(pair[0], pair[1]);
            }
            else if (typed[i].StartsWith("--", StringComparison.Ordinal))
            {
                options.Add(typed[i], typed[++i]);
            }
            else
            {
                words.Add(typed[i]);
            }
        }

        var at = options.GetValueOrDefault("--at");
        _ = words switch
        {
            ["record", var check, .. var reading] => story.Find(new SaidFinding(check, string.Join(' ', reading), at) { SetUp = setUp.Count == 0 ? null : setUp }),
            ["swap", var part, var a, var b] => story.Swap(part, a, b, options.GetValueOrDefault("--then")),
            ["remedy", var action] => story.Remedy(action, at, options.GetValueOrDefault("--output"), options.GetValueOrDefault("--result")),
            ["intake", var question, var answer] => story.Record(new Intake(question, answer)),
            _ => throw new InvalidDataException($"{entry} is no entry of a case."),
        };
    }
}
