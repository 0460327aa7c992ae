using System.CommandLine;
using Undercowl.Diagnosis;
using Undercowl.Jobs;

namespace Undercowl.Cli.Commands;

internal static class AcknowledgeCommand
{
    public const string Summary = "Record that a caution was read and understood.";

    public static Verb Build(Shell shell)
    {
        var job = CommonArguments.Job();
        var caution = new Argument<string>("CAUTION") { Description = "The caution, as `undercowl next JOB` shows it." };
        return new Verb(shell, "acknowledge", Summary, "undercowl acknowledge boat7.jsonl CAUTION").Takes(job, caution).Does(parsed =>
        {
            var id = parsed.GetRequiredValue(caution);
            var known = shell.Knowledge.Known.Cautions;
            return known.Any(c => c.Id == id)
                ? Recording.Of(shell, parsed.GetRequiredValue(job), _ => new CautionAcknowledged(id))
                : throw new DiagnosisException($"There is no caution \"{id}\".", Near.Mend(id, known.Select(c => c.Id)));
        });
    }
}
