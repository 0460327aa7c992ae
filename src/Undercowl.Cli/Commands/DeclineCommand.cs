using System.CommandLine;
using Undercowl.Diagnosis;
using Undercowl.Jobs;

namespace Undercowl.Cli.Commands;

internal static class DeclineCommand
{
    public const string Summary = "Record that a check or remedy was refused; it is not proposed again.";

    public static Verb Build(Shell shell)
    {
        var job = CommonArguments.Job();
        var what = new Argument<string>("WHAT") { Description = "The check or remedy." };
        var at = new Option<string?>("--at") { HelpName = "PLACE", Description = "Where; left out, everywhere." };
        var why = new Option<string>("--why") { HelpName = "TEXT", Description = "The reason given.", Required = true };
        return new Verb(shell, "decline", Summary, "undercowl decline boat7.jsonl WHAT --why \"the owner does not want it\"").Takes(job, what, at, why).Does(parsed =>
        {
            var id = parsed.GetRequiredValue(what);
            var known = shell.Knowledge.Known.Checks.Select(c => c.Id).Concat(shell.Knowledge.Known.Remedies.Select(r => r.Id)).ToArray();
            return known.Contains(id)
                ? Recording.Of(shell, parsed.GetRequiredValue(job), _ => new Declined(
                    id, parsed.GetRequiredValue(why), parsed.GetValue(at) is { } place ? Place.Parse(place) : null))
                : throw new DiagnosisException($"There is no check or remedy \"{id}\".", Near.Mend(id, known));
        });
    }
}
