using Undercowl.Diagnosis.Graph;
using Undercowl.Diagnosis.History;
using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Readings;

/// <summary>The interview's questions and answers laid over the network: they tell of the engine as it came in.</summary>
internal sealed class Interview(ConditionNodes conditions, Projection projection, Laying laying)
{
    private static readonly string[] Befallen = ["no", "yes"];

    /// <summary>The answers that count, with what they tell of quantities and of common causes that tie.</summary>
    public IEnumerable<LaidAnswer> Answers()
    {
        foreach (var answer in GivenAnswer.In(conditions.Model.Knowledge, projection))
        {
            ToldOf[] told = [.. Tells(answer.Question).Where(t => !t.Signal.IsConstant)];

            // Answers that do not exclude each other tell of each thing by itself, so that nothing ties those together.
            IEnumerable<ToldOf[]> groups = answer.Question.Several ? told.Select(t => (ToldOf[])[t]) : told.Length == 0 ? [] : [told];
            yield return new LaidAnswer(answer, [.. groups.Select(g => Together(answer, g))]);
        }
    }

    /// <summary>The questions that nobody has answered, with what they would tell of that bears on something here.</summary>
    public IEnumerable<(IntakeQuestion Question, ToldOf[] Tells)> Open() => conditions.Model.Knowledge.Intake
        .Where(q => q.Tells.Count > 0 && !projection.All<Intake>().Any(i => conditions.Model.Knowledge.Today(i.Body.Question) == q.Id))
        .Select(q => (q, Tells(q).ToArray()));

    /// <summary>What a question tells of. A common cause that ties nothing is a constant no: what is told of it is heard apart.</summary>
    private IEnumerable<ToldOf> Tells(IntakeQuestion question)
    {
        foreach (var telling in question.Tells)
        {
            if (telling.Quantity is { } quantity)
            {
                yield return new ToldOf(telling, laying.Copies(conditions.AsFound, WhenItShows()).Of(quantity, 0), conditions.Model.Quantity(quantity).Levels, null);
            }
            else if (Array.Find(conditions.Model.CommonCauses, c => c.Id == telling.CommonCause) is { } cause)
            {
                yield return new ToldOf(telling, conditions.Tied(cause) ? new Signal(conditions.Befell(cause), NodeGraph.Identity(Befallen.Length)) : Signal.Constant(0), Befallen, cause);
            }
        }
    }

    private (int[] Nodes, double[] Likelihood) Together(GivenAnswer answer, ToldOf[] told)
    {
        int[] nodes = [.. told.Select(t => t.Signal.Node).Distinct()];
        int[] states = [.. nodes.Select(n => conditions.Graph[n].States.Length)];
        var likelihood = new double[states.Aggregate(1, (size, count) => size * count)];
        for (var joint = 0; joint < likelihood.Length; joint++)
        {
            var rows = told.Select(t => t.RowAt(State(joint, Array.IndexOf(nodes, t.Signal.Node)))).OfType<IReadOnlyDictionary<string, double>>();
            likelihood[joint] = answer.Times(AnswerChances.Of(answer.Question, rows)[answer.Index]);
        }

        return (nodes, likelihood);

        int State(int joint, int node) => joint / states.Skip(node + 1).Aggregate(1, (size, count) => size * count) % states[node];
    }

    /// <summary>The set-up in which what was complained of first shows.</summary>
    private IReadOnlyDictionary<string, string> WhenItShows() =>
        projection.Complaints is [var said, ..] && conditions.Model.Knowledge.ComplaintOf(said.Id) is { } complaint
            ? SetUpResolution.Of(said, complaint) : new Dictionary<string, string>();
}

/// <summary>What a question tells of, in one job.</summary>
/// <param name="Telling">The rows.</param>
/// <param name="Signal">The common cause or quantity.</param>
/// <param name="Levels">Its levels by name.</param>
/// <param name="Cause">The common cause, if it is one.</param>
internal sealed record ToldOf(Telling Telling, Signal Signal, IReadOnlyList<string> Levels, CommonCause? Cause)
{
    /// <summary>The row that holds in a state of the signal's node; null where it is as usual.</summary>
    public IReadOnlyDictionary<string, double>? RowAt(int state) => Telling.Given.GetValueOrDefault(Levels[Signal.Map[state]]);
}

/// <summary>An answer of the interview laid over the network.</summary>
/// <param name="Given">The answer.</param>
/// <param name="Told">Nodes that it tells of together, and the likelihood by their joint state, the last fastest; what is heard apart not among them.</param>
internal sealed record LaidAnswer(GivenAnswer Given, IReadOnlyList<(int[] Nodes, double[] Likelihood)> Told)
{
    public string Label => Given.Label;
}
