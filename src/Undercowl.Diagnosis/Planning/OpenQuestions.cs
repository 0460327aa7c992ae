using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Readings;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Planning;

/// <summary>
/// The questions of the interview that are worth putting: nobody has answered them, and the answer would tell something of
/// what must be mended. They cost nothing and take no turn, so they stand beside the proposals and not among them.
/// </summary>
internal sealed class OpenQuestions(JobNetwork network, ForwardRun run)
{
    /// <summary>Bits below which a question is not put. Estimate.</summary>
    private const double WorthPutting = 0.01;

    private const int Most = 3;

    private readonly (IntakeQuestion Question, ToldOf[] Tells)[] _open = [.. network.Interview.Open()];
    private readonly Dictionary<CommonCause, double[]> _befell = [];

    /// <param name="told">Bits of what must be mended that outcomes tell, given the chance of each outcome in each drawn engine (outcomes fastest), and their number.</param>
    public IReadOnlyList<QuestionAnswer> WorthAsking(Func<double[], int, double> told)
    {
        run.Extend();
        return
        [
            .. _open.Select(asked => (asked.Question, Bits: told(Chances(asked.Question, asked.Tells), asked.Question.Answers.Count)))
                .Where(q => q.Bits >= WorthPutting)
                .OrderByDescending(q => Math.Round(q.Bits, 6)).ThenBy(q => q.Question.Id, StringComparer.Ordinal)
                .Take(Most)
                .Select(q => new QuestionAnswer(q.Question.Id, q.Question.Ask, [.. q.Question.Answers.Select(a => a.Id)], q.Bits)),
        ];
    }

    private double[] Chances(IntakeQuestion question, ToldOf[] tells)
    {
        var answers = question.Answers.Count;
        var chances = new double[run.Count * answers];
        for (var draw = 0; draw < run.Count; draw++)
        {
            var row = chances.AsSpan(draw * answers, answers);
            for (var a = 0; a < answers; a++)
            {
                row[a] = question.Usually[question.Answers[a].Id];
            }

            foreach (var of in tells)
            {
                Weigh(question, of, draw, row);
            }

            var sum = 0.0;
            foreach (var p in row)
            {
                sum += p;
            }

            for (var a = 0; a < answers; a++)
            {
                row[a] /= sum;
            }
        }

        return chances;
    }

    private void Weigh(IntakeQuestion question, ToldOf of, int draw, Span<double> row)
    {
        var holds = of.Cause is { } cause ? Befell(cause)[draw] : 1;
        var there = of.Cause is null ? of.Telling.Given.GetValueOrDefault(of.Levels[run.Level(draw, of.Signal)]) : of.Telling.Given.Values.Single();
        for (var a = 0; a < row.Length && there is not null; a++)
        {
            var id = question.Answers[a].Id;
            row[a] *= 1 - holds + holds * there[id] / question.Usually[id];
        }
    }

    /// <summary>By draw the chance that a common cause befell that engine, judging by the conditions drawn that it bears on.</summary>
    private double[] Befell(CommonCause cause)
    {
        if (_befell.TryGetValue(cause, out var known))
        {
            return known;
        }

        var odds = new double[run.Count];
        Array.Fill(odds, cause.Prior / (1 - cause.Prior));
        foreach (var aspect in network.Model.Aspects)
        {
            if (Array.Find(aspect.Swayed, s => s.Cause == cause) is { } swayed)
            {
                var (with, without) = swayed.Alone(aspect.Prior);
                var node = network.Conditions.First(aspect);
                for (var draw = 0; draw < odds.Length; draw++)
                {
                    odds[draw] *= with[run.State(draw, node)] / without[run.State(draw, node)];
                }
            }
        }

        return _befell[cause] = Array.ConvertAll(odds, o => o / (1 + o));
    }
}
