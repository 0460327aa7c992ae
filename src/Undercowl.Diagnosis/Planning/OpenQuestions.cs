using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Graph;
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
                .Select(q => new QuestionAnswer(q.Question.Id, q.Question.Ask, [.. q.Question.Answers.Select(a => a.Id)], q.Bits, [.. q.Question.Answers.Select(a => new NamedAnswer(a.Id, a.Name))])),
        ];
    }

    /// <summary>By draw the chance of each answer, answers fastest.</summary>
    private double[] Chances(IntakeQuestion question, ToldOf[] tells)
    {
        double[] usually = [.. question.Answers.Select(a => question.Usually[a.Id])];
        var chances = new double[run.Count * usually.Length];
        for (var i = 0; i < chances.Length; i += usually.Length)
        {
            usually.CopyTo(chances, i);
        }

        foreach (var of in tells)
        {
            if (of.Cause is { } cause)
            {
                Weigh(chances, usually, There(question, of.Telling.Given.Values.Single()), Befell(cause));
            }
            else
            {
                Weigh(chances, usually, of.Signal, [.. of.Signal.Map.Select(level => of.Telling.Given.GetValueOrDefault(of.Levels[level]) is { } row ? There(question, row) : null)]);
            }
        }

        for (var i = 0; i < chances.Length; i += usually.Length)
        {
            var sum = 0.0;
            for (var a = 0; a < usually.Length; a++)
            {
                sum += chances[i + a];
            }

            for (var a = 0; a < usually.Length; a++)
            {
                chances[i + a] /= sum;
            }
        }

        return chances;
    }

    private static double[] There(IntakeQuestion question, Dictionary<string, double> row) => [.. question.Answers.Select(a => row[a.Id])];

    /// <summary>What is told of a quantity: by state of the signal's node the chances of the answers, null where they are as usual.</summary>
    private void Weigh(double[] chances, double[] usually, Signal signal, double[]?[] rows)
    {
        double[]?[] times = Array.ConvertAll(rows, row => row is null ? null : Array.ConvertAll([.. row.Index()], r => r.Item / usually[r.Index]));
        var states = signal.IsConstant ? null : run.States(signal.Node);
        for (var draw = 0; draw < run.Count; draw++)
        {
            if (times[states is null ? 0 : states[draw]] is not { } row)
            {
                continue;
            }

            var at = draw * row.Length;
            for (var a = 0; a < row.Length; a++)
            {
                chances[at + a] *= row[a];
            }
        }
    }

    /// <summary>What is told of a common cause that befell each drawn engine with a chance of its own.</summary>
    private static void Weigh(double[] chances, double[] usually, double[] there, double[] befell)
    {
        for (int draw = 0, i = 0; draw < befell.Length; draw++)
        {
            var holds = befell[draw];
            for (var a = 0; a < there.Length; a++, i++)
            {
                chances[i] *= 1 - holds + holds * there[a] / usually[a];
            }
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
        Array.Fill(odds, 1);
        // Nearly all that was drawn is sound, so that only what is not is gone through one by one.
        var sound = cause.Prior / (1 - cause.Prior);
        foreach (var aspect in network.Model.Aspects)
        {
            if (Array.Find(aspect.Swayed, s => s.Cause == cause) is not { } swayed)
            {
                continue;
            }

            var (with, without) = swayed.Alone(aspect.Prior);
            sound *= with[0] / without[0];
            var node = network.Conditions.First(aspect);
            var states = run.States(node);
            for (var draw = run.NextFaulty(node, 0); draw < states.Length; draw = run.NextFaulty(node, draw + 1))
            {
                odds[draw] *= with[states[draw]] / without[states[draw]] / (with[0] / without[0]);
            }
        }

        return _befell[cause] = Array.ConvertAll(odds, o => o * sound / (1 + o * sound));
    }
}
