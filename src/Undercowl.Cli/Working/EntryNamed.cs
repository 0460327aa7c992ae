using Undercowl.Jobs;

namespace Undercowl.Cli;

/// <summary>Finds the entry that a person means: by its whole id, by the end of it, or as <c>last</c>.</summary>
internal static class EntryNamed
{
    private const int Least = 4;

    public static Entry Of(Projection projection, string text)
    {
        if (text == "last")
        {
            return projection.Live.LastOrDefault(e => e.Body is not (Withdrawn or Opened))
                ?? throw new Refusal("There is nothing to take back.", "The opening stays.");
        }

        Entry[] found = [.. projection.Job.Entries.Where(e => text.Length >= Least && e.Id.ToString().EndsWith(text, StringComparison.Ordinal))];
        return found.Length switch
        {
            1 => found[0],
            0 => throw new Refusal($"There is no entry \"{text}\" in this job.", $"Give its id or at least the last {Least} characters of it; undercowl report lists them."),
            _ => throw new Refusal($"\"{text}\" is the end of {found.Length} entries.", "Give more of the id."),
        };
    }
}
