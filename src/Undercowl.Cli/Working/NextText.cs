using Undercowl.Diagnosis.Answers;

namespace Undercowl.Cli;

/// <summary>What to do next as the technician reads it: the best step whole, the others in short, then what is left out and why.</summary>
internal static class NextText
{
    private const int Named = 4;

    /// <param name="file">The job's file, for the command line that records the step.</param>
    /// <param name="answer">The answer.</param>
    /// <param name="all">Name every step that is left out, with its places.</param>
    /// <param name="page">Where it is written.</param>
    public static void Write(string file, NextAnswer answer, bool all, Page page)
    {
        if (answer.Proposals.Count == 0)
        {
            page.Line("Nothing is left to propose. See: undercowl report, undercowl sign-off.");
        }
        else
        {
            StepText.Write(answer.Proposals[0], answer.Currency, page);
            page.Line();
            // Not broken at the page's width: it is there to be copied.
            page.Line("Record it, for example:");
            page.Line("  " + StepText.Recording(file, answer.Proposals[0]));
        }

        Others(answer, page);
        if (answer.Questions.Count > 0)
        {
            page.Heading("Worth asking the customer: it costs nothing");
            page.Items("  - ", answer.Questions.Select(q => $"{q.Ask} {string.Join(" | ", q.Answers)}"));
            page.Line($"  undercowl intake {file} {answer.Questions[0].Id} ANSWER");
        }

        foreach (var reason in answer.Withheld.GroupBy(w => w.Reason))
        {
            page.Heading("Withheld");
            page.Item("  ", reason.Key);
            page.Item("  - ", Steps(reason, all));
        }

        if (answer.Unavailable.Count > 0)
        {
            page.Heading("Cannot be done now");
            page.Items("  - ", answer.Unavailable.GroupBy(u => u.Reason).Select(reason => $"{Steps(reason, all)}: {reason.Key}"));
        }

        if (answer.Restore.Count > 0)
        {
            page.Heading("To put back before sign-off");
            page.Items("  - ", answer.Restore.Select(r => $"{r.Key}: {r.What}. {r.How}"));
        }

        page.Line();
        page.Prevail();
    }

    /// <summary>Each with its cautions; one that stands above already is named only.</summary>
    private static void Others(NextAnswer answer, Page page)
    {
        var told = answer.Proposals.Take(1).SelectMany(p => p.Cautions).Where(c => !c.Acknowledged).Select(c => c.Id).ToHashSet();
        foreach (var (i, step) in answer.Proposals.Index().Skip(1))
        {
            if (i == 1)
            {
                page.Heading("Or");
            }

            page.Item($"  {i + 1}. ", $"{step.Name} ({StepText.Cost(step, answer.Currency)}): {step.Why}");
            var open = step.Cautions.Where(c => !c.Acknowledged).ToLookup(c => told.Contains(c.Id));
            page.Items("     ! ", open[false].Select(StepText.Caution));
            if (open[true].Any())
            {
                page.Item("     ! ", $"Cautions as above: {string.Join(", ", open[true].Select(c => c.Id))}");
            }

            told.UnionWith(open[false].Select(c => c.Id));
        }
    }

    /// <summary>Steps by name, or all of them by id with their places.</summary>
    private static string Steps(IEnumerable<NotProposed> steps, bool all)
    {
        var kinds = steps.GroupBy(s => s.Id).ToArray();
        if (all)
        {
            return string.Join(", ", kinds.Select(k => k.Key + Places([.. k.Select(s => s.Place).Where(p => p != "engine")])));
        }

        var named = string.Join(", ", kinds.Take(Named).Select(k => k.First().Name));
        return kinds.Length <= Named ? named : $"{named} and {kinds.Length - Named} more (--all names them)";
    }

    private static string Places(string[] places) => places.Length == 0 ? "" : $" ({string.Join(" ", places)})";
}
