using System.CommandLine;
using Undercowl.Cli.Documents;
using Undercowl.Diagnosis;
using Undercowl.Diagnosis.Safety;
using Undercowl.Jobs;

namespace Undercowl.Cli.Commands;

internal static class VentilateCommand
{
    private static readonly char[] Separators = [',', ' '];

    public const string Summary = "Record what makes it safe to go on, or say what is still wanted.";

    public static Verb Build(Shell shell)
    {
        var job = CommonArguments.Job();
        var clear = new Option<string[]>("--clear") { HelpName = "cowl,bilge,tank", Description = "Places smelt at after ventilating, and found clear.", AllowMultipleArgumentsPerToken = true };
        var met = new Option<string[]>("--met") { HelpName = "CONDITION…", Description = "Conditions of lifting an interlock that are met.", AllowMultipleArgumentsPerToken = true };
        return new Verb(shell, "ventilate", Summary, "undercowl ventilate boat7.jsonl", "undercowl ventilate boat7.jsonl --clear cowl,bilge,tank --met CONDITION CONDITION")
            .Takes(job, clear, met).Does(parsed =>
            {
                var path = parsed.GetRequiredValue(job);
                var (places, conditions) = (Split(parsed.GetValue(clear)), Split(parsed.GetValue(met)));
                if (places.Length + conditions.Length == 0)
                {
                    using var read = JobAtHand.Read(shell, path);
                    return Say(read, []);
                }

                using var open = JobAtHand.Write(shell, path);
                return Say(open, open.Record(Bodies(open.Diagnosis, places, conditions)));
            });
    }

    /// <summary>The entries for places found clear and conditions met; refuses a place or condition that no interlock asks for.</summary>
    public static IReadOnlyList<EntryBody> Bodies(JobDiagnosis diagnosis, string[] places, string[] conditions)
    {
        string[] known = [.. diagnosis.Knowledge.Interlocks.SelectMany(i => i.Lift).Select(l => l.Id).Distinct()];
        foreach (var condition in conditions.Where(c => !known.Contains(c)))
        {
            throw new DiagnosisException($"No interlock asks for \"{condition}\".", Near.Mend(condition, known));
        }

        string[] smelt = [.. diagnosis.Knowledge.Interlocks.SelectMany(i => i.Smelt?.Places ?? []).Distinct()];
        foreach (var place in places.Where(p => smelt.Length > 0 && !smelt.Contains(p)))
        {
            throw new DiagnosisException($"No interlock asks whether \"{place}\" is clear.", Near.Mend(place, smelt));
        }

        return
        [
            .. places.Length == 0 ? (EntryBody[])[] : [new Ventilated(places)],
            .. conditions.Select(c => new Interlock(c, Interlock.Met)),
        ];
    }

    private static string[] Split(string[]? words) =>
        [.. (words ?? []).SelectMany(w => w.Split(Separators, StringSplitOptions.RemoveEmptyEntries)).Distinct()];

    private static Answer Say(JobAtHand job, IReadOnlyList<Entry> entries)
    {
        var answer = new SafetyAnswer(1, [.. job.Diagnosis.Interlocks.Select(i => Item(i, job.Diagnosis.Projection))], [.. entries.Select(RecordedEntry.Of)]);
        return Answer.Of(answer, TerminalJson.Default.SafetyAnswer, (said, page) =>
        {
            foreach (var entry in entries)
            {
                page.Line($"recorded {EntryWords.Short(entry.Id)}  {EntryWords.Of(entry.Body)}");
            }

            foreach (var interlock in said.Interlocks)
            {
                page.Item(!interlock.Clear ? "NOT CLEAR " : interlock.Known ? "clear     " : "no word   ", interlock.Clear ? interlock.Known ? interlock.Name : $"{interlock.Name}: nothing recorded" : interlock.Reason);
                if (interlock.Enough.Count > 0)
                {
                    page.Item("            ", $"One is enough: {string.Join(", or ", [.. interlock.Enough.Select(e => $"record {e}"), .. Smell(interlock), "all that follow"])}.");
                }
                else if (interlock.ToSmell.Count > 0)
                {
                    page.Item("            ", $"Still to smell at: {string.Join(", ", Smell(interlock))}.");
                }

                page.Items("            --met ", interlock.Missing.Select(m => $"{m.Id}  {m.Name}"));
            }
        });
    }

    private static string[] Smell(InterlockItem interlock) => interlock.ToSmell.Count == 0 ? [] : [$"--clear {string.Join(',', interlock.ToSmell)}"];

    private static InterlockItem Item(InterlockStatus status, Projection projection) => new(
        status.Interlock.Id, status.Interlock.Name, status.Clear, status.Known, status.Clear ? "" : status.Reason,
        [.. Wanted(status, projection).Select(m => new NamedItem(m.Id, m.Name))], status.ToSmell, status.Enough);

    /// <summary>What would lift it: after an opening all that is stated since counts; before one, all that was ever stated.</summary>
    private static IEnumerable<Knowledge.Option> Wanted(InterlockStatus status, Projection projection) => status switch
    {
        { Clear: true } => [],
        { Missing.Count: > 0 } => status.Missing,
        _ => status.Interlock.Lift.Where(l => !projection.All<Interlock>().Any(said => said.Body.Id == l.Id)),
    };
}
