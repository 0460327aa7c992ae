using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Readings;

/// <summary>An answer of the interview that counts.</summary>
/// <param name="Said">The entry.</param>
/// <param name="Question">Its question, as known today.</param>
/// <param name="Index">Which of the question's answers.</param>
/// <param name="Doubt">Chance (0 to 1) that it has nothing to do with the case.</param>
internal sealed record GivenAnswer(Said<Intake> Said, IntakeQuestion Question, int Index, double Doubt)
{
    public string Label => Said.Id.ToString();

    private string Answer => Question.Answers[Index].Id;

    /// <summary>The answers that tell something: of a question whose answers exclude each other the last, else each that was given.</summary>
    public static IEnumerable<GivenAnswer> In(KnowledgeBase knowledge, Projection projection)
    {
        foreach (var said in projection.All<Intake>().GroupBy(i => knowledge.Today(i.Body.Question)))
        {
            if (knowledge.QuestionOf(said.Key) is not { Tells.Count: > 0 } question)
            {
                continue;
            }

            foreach (var given in question.Several ? said.DistinctBy(i => i.Body.Answer) : said.TakeLast(1))
            {
                if (question.Answers.TakeWhile(a => a.Id != given.Body.Answer).Count() is var index && index < question.Answers.Count)
                {
                    yield return new GivenAnswer(given, question, index, Doubts.Of(knowledge, given.Body.Hand, given.Body.Hearsay));
                }
            }
        }
    }

    /// <summary>How many times likelier the answer is where a common cause befell the engine, nothing else the case.</summary>
    public double Of(Telling telling) => Times(telling.Given.Values.Single()[Answer]);

    /// <summary>How many times likelier the answer is than usual where its chance is <paramref name="chance"/>, as far as it is not doubted.</summary>
    public double Times(double chance) => Doubted(chance) / Doubted(Question.Usually[Answer]);

    private double Doubted(double chance) => (1 - Doubt) * chance + Doubt / Question.Answers.Count;
}
