using System.CommandLine;
using Undercowl.Cli.Documents;
using Undercowl.Diagnosis;
using Undercowl.Jobs;

namespace Undercowl.Cli.Commands;

internal static class IntakeCommand
{
    public const string Summary = "Record an answer of the intake interview, or list its questions.";

    public static Verb Build(Shell shell)
    {
        var job = CommonArguments.Job();
        var question = new Argument<string?>("QUESTION") { Description = "The question; left out, all are listed.", Arity = ArgumentArity.ZeroOrOne };
        var answer = new Argument<string?>("ANSWER") { Description = "The answer.", Arity = ArgumentArity.ZeroOrOne };
        var hearsay = new Option<bool>("--hearsay") { Description = "Told by somebody not trained to tell." };
        var words = new Option<string?>("--words") { HelpName = "TEXT", Description = "As it was put." };
        return new Verb(shell, "intake", Summary, "undercowl intake boat7.jsonl", "undercowl intake boat7.jsonl QUESTION ANSWER")
            .Takes(job, question, answer, hearsay, words).Does(parsed =>
            {
                var path = parsed.GetRequiredValue(job);
                var asked = shell.Knowledge.Known.Intake;
                if (parsed.GetValue(question) is not { } id)
                {
                    return Questions(shell, path);
                }

                var meant = asked.FirstOrDefault(q => q.Id == id) ?? throw new DiagnosisException($"There is no question \"{id}\".", Near.Mend(id, asked.Select(q => q.Id)));
                var said = parsed.GetValue(answer) ?? throw new Refusal($"\"{meant.Ask}\" has no answer.", $"Give one of: {string.Join(", ", meant.Answers.Select(a => a.Id))}.");
                if (!meant.Answers.Any(a => a.Id == said))
                {
                    throw new DiagnosisException($"\"{said}\" is no answer of {id}.", Near.Mend(said, meant.Answers.Select(a => a.Id)));
                }

                return Recording.Of(shell, path, _ => new Intake(id, said, Hearsay: parsed.GetValue(hearsay), Words: parsed.GetValue(words)));
            });
    }

    private static Answer Questions(Shell shell, string path)
    {
        using var at = JobAtHand.Read(shell, path);
        var given = Projection.Of(at.Job).All<Intake>().ToArray();
        QuestionItem[] questions = [.. shell.Knowledge.Known.Intake.Select(q => new QuestionItem(
            q.Id, q.Ask, [.. q.Answers.Select(a => new NamedItem(a.Id, a.Name))], given.LastOrDefault(i => shell.Knowledge.Known.Today(i.Body.Question) == q.Id)?.Body.Answer))];
        return Answer.Of(new QuestionsAnswer(1, questions), TerminalJson.Default.QuestionsAnswer, (answer, page) =>
        {
            foreach (var question in answer.Questions)
            {
                page.Line($"{page.Paint.Strong(question.Id)}  {question.Ask}{(question.Answered is null ? "" : $"  [{question.Answered}]")}");
                page.Item("    ", string.Join(" | ", question.Answers.Select(a => a.Id)));
            }
        });
    }
}
