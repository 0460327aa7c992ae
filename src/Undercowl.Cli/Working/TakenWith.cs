using Undercowl.Diagnosis;

namespace Undercowl.Cli;

/// <summary>Says the unusual states that a reading took over from how the engine stands, and how to say otherwise; nothing where there are none.</summary>
internal static class TakenWith
{
    /// <param name="taken">The states.</param>
    /// <param name="otherwise">What to do with the options that say otherwise.</param>
    /// <param name="page">Where it is written.</param>
    public static void Write(IReadOnlyList<TakenState> taken, string otherwise, Page page)
    {
        if (taken.Count > 0)
        {
            page.Item("", $"taken with: {string.Join(", ", taken.Select(t => t.Name))} (as the engine stands; {otherwise} {string.Join(' ', taken.Select(t => $"--set-up {t.SetUp}={t.Usual}"))} if not)");
        }
    }
}
