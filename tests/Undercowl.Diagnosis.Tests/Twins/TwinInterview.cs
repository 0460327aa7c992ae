using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Tests.Twins;

/// <summary>
/// What was answered, and how the common causes stand: one that is together ties what it bears on when what was seen of that moves its
/// chance by 0.02 and it is not known to 0.05. As the document says.
/// </summary>
internal sealed class TwinInterview
{
    private const double Moved = 0.02;
    private const double Known = 0.05;

    private readonly KnowledgeBase _knowledge;
    private readonly List<(IntakeQuestion Question, string Answer, double Doubt)> _answers = [];

    private readonly List<(Likelihood Likelihood, string Choice)> _seen;
    private readonly EngineLayout _layout;

    public TwinInterview(KnowledgeBase knowledge, EngineLayout layout, IReadOnlyList<Entry> entries)
    {
        _knowledge = knowledge;
        foreach (var question in knowledge.Intake.Where(q => q.Tells.Count > 0))
        {
            Intake[] given = [.. entries.Select(e => e.Body).OfType<Intake>().Where(i => i.Question == question.Id)];
            _answers.AddRange((question.Several ? given.DistinctBy(i => i.Answer) : given.TakeLast(1)).Select(i => (question, i.Answer, Doubt(i))));
        }

        _seen = [.. entries.Select(e => e.Body).OfType<Finding>().Where(f => f.Value is ChoiceReading).Select(f => (f.Check, f.Place, Value: ((ChoiceReading)f.Value).Choice)).Distinct()
            .Select(f => (knowledge.Checks.First(c => c.Id == f.Check).Likelihood, f.Value)).Where(f => f.Likelihood is { Aspect: not null, Model: LikelihoodModel.Table })];
        _layout = layout;
        CommonCause[] borne = [.. knowledge.CommonCauses.Where(c => c.Only.Holds(layout) && Bears(c, layout))];
        Tied = [.. borne.Where(c => c.Together && Math.Abs(Alone(c, []) - c.Prior) >= Moved && Alone(c, _answers) is > Known and < 1 - Known)];
        Apart = [.. borne.Except(Tied).Select(c => (c, Alone(c, _answers)))];
    }

    public CommonCause[] Tied { get; }

    /// <summary>The others, with their chance by what was answered and seen.</summary>
    public (CommonCause Cause, double After)[] Apart { get; }

    public static bool Befell(Recalled world, CommonCause cause) => world.Draw($"befell {cause.Id}", [1 - cause.Prior, cause.Prior]) == 1;

    /// <summary>The same, asked of a world that remembers nothing.</summary>
    public static bool Befell(IWorld world, CommonCause cause) => world.Draw($"befell {cause.Id}", [1 - cause.Prior, cause.Prior]) == 1;

    /// <summary>The chance of all that was answered in a world, to the chance of it where nothing is the case of what it tells. What ties nothing is told of apart.</summary>
    /// <param name="world">The world.</param>
    /// <param name="level">Level of a quantity of the engine as the complaint has it.</param>
    public double Likelihood(IWorld world, Func<string, string> level)
    {
        var likelihood = 1.0;
        foreach (var (question, answer, doubt) in _answers)
        {
            Telling[] heard = [.. question.Tells.Where(t => t.Quantity is not null || Tied.Any(c => c.Id == t.CommonCause))];
            foreach (var together in question.Several ? [.. heard.Select(t => (Telling[])[t])] : (Telling[][])[heard])
            {
                likelihood *= Said(question, answer, doubt, [.. together.Select(t => Row(world, t, level)).OfType<Dictionary<string, double>>()]);
            }
        }

        return likelihood;
    }

    /// <summary>The chance of what was answered of the untied common causes, by the condition of one aspect: averaged over whether each befell, given that condition.</summary>
    public double Apartly(TwinAspect aspect, int condition)
    {
        var likelihood = 1.0;
        foreach (var (cause, _) in Apart)
        {
            double[] times = [.. aspect.Conditions.Select(c => cause.Likelier.FirstOrDefault(l => l.Aspect == aspect.Kind && l.Conditions.Values.Contains(c.Id))?.Times ?? 1)];
            if (times.Zip(aspect.Conditions).Any(t => t.First != 1 && t.Second.Prior > 0))
            {
                double[] without = [.. aspect.Chances.Skip(1).Zip(times, (p, t) => p / (1 - cause.Prior + cause.Prior * t))];
                double[] with = [.. without.Zip(times, (p, t) => p * t)];
                var (no, yes) = condition == 0 ? (1 - without.Sum(), 1 - with.Sum()) : (without[condition - 1], with[condition - 1]);
                var befell = cause.Prior * yes / (cause.Prior * yes + (1 - cause.Prior) * no);
                likelihood *= 1 - befell + befell * _answers.SelectMany(a => a.Question.Tells.Where(t => t.CommonCause == cause.Id), (a, t) => Said(a.Question, a.Answer, a.Doubt, [t.Given["yes"]])).Aggregate(1.0, (x, y) => x * y);
            }
        }

        return likelihood;
    }

    private Dictionary<string, double>? Row(IWorld world, Telling telling, Func<string, string> level) =>
        telling.Quantity is { } quantity ? telling.Given.GetValueOrDefault(level(quantity))
        : Befell(world, Tied.First(c => c.Id == telling.CommonCause)) ? telling.Given["yes"] : null;

    private static double Said(IntakeQuestion question, string answer, double doubt, Dictionary<string, double>[] rows)
    {
        double Weight(string a) => rows.Aggregate(question.Usually[a], (w, row) => w * row[a] / question.Usually[a]);
        double Doubted(double p) => (1 - doubt) * p + doubt / question.Answers.Count;
        return Doubted(Weight(answer) / question.Answers.Sum(a => Weight(a.Id))) / Doubted(question.Usually[answer]);
    }

    /// <summary>The chance of a common cause by what was answered, as if it were told of alone.</summary>
    private double Alone(CommonCause cause, IEnumerable<(IntakeQuestion Question, string Answer, double Doubt)> answers)
    {
        var (yes, no) = (cause.Prior, 1 - cause.Prior);
        foreach (var (question, answer, doubt) in answers)
        {
            foreach (var telling in question.Tells.Where(t => t.CommonCause == cause.Id))
            {
                yes *= Said(question, answer, doubt, [telling.Given["yes"]]);
                no *= Said(question, answer, doubt, []);
            }
        }

        foreach (var (likelihood, choice) in _seen)
        {
            var (kind, id) = (likelihood.Aspect!.Split('.')[0], likelihood.Aspect.Split('.')[1]);
            var aspect = _knowledge.Parts.First(p => p.Id == kind).Aspects.First(a => a.Id == id);
            Condition[] conditions = [.. aspect.Conditions.Where(c => c.Only.Holds(_layout))];
            var rows = cause.Likelier.Where(l => l.Aspect == likelihood.Aspect).ToArray();
            if (rows.Length > 0 && aspect.Only.Holds(_layout) && LayoutPlaces.Of(_layout).Any(p => p.Kind == kind))
            {
                double[] times = [.. conditions.Select(c => rows.FirstOrDefault(r => r.Conditions.Values.Contains(c.Id))?.Times ?? 1)];
                double[] apart = [.. conditions.Zip(times, (c, t) => c.Prior / (1 - cause.Prior + cause.Prior * t))];
                double[] there = [.. apart.Zip(times, (p, t) => p * t)];
                double Seen(double[] faults) => (1 - faults.Sum()) * likelihood.Given["sound"][choice] + faults.Zip(conditions, (p, c) => p * likelihood.Given[c.Id][choice]).Sum();
                yes *= Seen(there);
                no *= Seen(apart);
            }
        }

        return yes / (yes + no);
    }

    /// <summary>Whether it makes anything likelier that can be out of order in this engine.</summary>
    private bool Bears(CommonCause cause, EngineLayout layout) => LayoutPlaces.Of(layout).Select(p => p.Kind).Distinct()
        .SelectMany(kind => _knowledge.Parts.First(p => p.Id == kind).Aspects.Where(a => a.Only.Holds(layout)), (kind, aspect) => (Id: $"{kind}.{aspect.Id}", aspect.Conditions))
        .Any(a => cause.Likelier.Any(l => l.Aspect == a.Id && l.Times != 1 && a.Conditions.Any(c => c.Prior > 0 && c.Only.Holds(layout) && l.Conditions.Contains(c.Id))));

    private double Doubt(Intake said) => said.Hearsay ? _knowledge.Hands.Select(h => h.Doubt).DefaultIfEmpty(0).Max() : _knowledge.Hands.FirstOrDefault(h => h.Id == said.Hand)?.Doubt ?? 0;
}
