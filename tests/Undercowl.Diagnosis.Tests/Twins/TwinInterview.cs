using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Tests.Twins;

/// <summary>
/// What was answered, and how the common causes stand: one that is together ties what it bears on when what was seen of that moves its
/// chance by 0.02. As the document says.
/// </summary>
internal sealed class TwinInterview
{
    private const double Moved = 0.02;

    private readonly KnowledgeBase _knowledge;
    private readonly List<(IntakeQuestion Question, string Answer, double Doubt)> _answers = [];

    /// <summary>What was seen of aspects: <c>kind.aspect</c>, and the chance of that choice by condition, sound first.</summary>
    private readonly List<(string Aspect, double[] Given)> _seen;
    private readonly EngineLayout _layout;

    public TwinInterview(KnowledgeBase knowledge, EngineLayout layout, IReadOnlyList<Entry> entries)
    {
        _knowledge = knowledge;
        foreach (var question in knowledge.Intake.Where(q => q.Tells.Count > 0))
        {
            Intake[] given = [.. entries.Select(e => e.Body).OfType<Intake>().Where(i => i.Question == question.Id)];
            _answers.AddRange((question.Several ? given.DistinctBy(i => i.Answer) : given.TakeLast(1)).Select(i => (question, i.Answer, Doubt(i))));
        }

        _layout = layout;
        _seen = [.. Seen(entries)];
        CommonCause[] borne = [.. knowledge.CommonCauses.Where(c => c.Only.Holds(layout) && Bears(c, layout))];
        Tied = [.. borne.Where(c => c.Together && (Moves(c, []) >= Moved || Moves(c, _answers) >= Moved))];
        Apart = [.. borne.Except(Tied).Select(c => (c, Alone(c, _answers)))];
    }

    /// <summary>Nothing answered and nothing seen.</summary>
    private TwinInterview(KnowledgeBase knowledge, EngineLayout layout) => (_knowledge, _layout, _seen, Tied, Apart) = (knowledge, layout, [], [], []);

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

    /// <summary>
    /// What was seen of aspects that this engine has: of the aspect itself, or, where it passes, of a quantity at the place of the part, by the level that it
    /// has where that condition is all that is amiss.
    /// </summary>
    private IEnumerable<(string Aspect, double[] Given)> Seen(IReadOnlyList<Entry> entries)
    {
        foreach (var finding in entries.Select(e => e.Body).OfType<Finding>().Where(f => f.Value is ChoiceReading).DistinctBy(f => (f.Check, f.Place, ((ChoiceReading)f.Value).Choice)))
        {
            var choice = ((ChoiceReading)finding.Value).Choice;
            var likelihood = _knowledge.Checks.First(c => c.Id == finding.Check).Likelihood;
            if (likelihood is { Aspect: { } id, Model: LikelihoodModel.Table } && LayoutPlaces.Of(_layout).Any(p => p.Kind == id.Split('.')[0]) && Aspect(id).Only.Holds(_layout))
            {
                yield return (id, [likelihood.Given["sound"][choice], .. Conditions(id).Select(c => likelihood.Given[c.Id][choice])]);
            }
            else if (likelihood is { Quantity: { } quantity, Model: LikelihoodModel.Table } && LayoutPlaces.TryCylinders(_layout, finding.Place.Text, out var lanes))
            {
                var levels = _knowledge.Quantities.First(q => q.Id == quantity).Levels;
                foreach (var aspect in Engine("", 0).Aspects.Where(a => a.Aspect.Passing && a.Part.EndsWith($"@{finding.Place.Text}", StringComparison.Ordinal) && _knowledge.CommonCauses.Any(c => c.Together && c.Likelier.Any(l => l.Aspect == a.Kind))))
                {
                    yield return (aspect.Kind, [.. aspect.Chances.Select((_, s) => Engine(aspect.Name, s) is var one ? likelihood.Given[levels[one.Level(one.In(TwinState.AsItCameIn, finding.SetUp), quantity, lanes[0])]][choice] : 0)]);
                }
            }
        }

        TwinEngine Engine(string amiss, int state) => new(_knowledge, _layout, new Only(amiss, state), new TwinInterview(_knowledge, _layout));
    }

    private Aspect Aspect(string id) => _knowledge.Parts.First(p => p.Id == id.Split('.')[0]).Aspects.First(a => a.Id == id.Split('.')[1]);

    private Condition[] Conditions(string id) => [.. Aspect(id).Conditions.Where(c => c.Only.Holds(_layout))];

    /// <summary>By how much what was seen moves the chance of a common cause.</summary>
    private double Moves(CommonCause cause, IReadOnlyCollection<(IntakeQuestion Question, string Answer, double Doubt)> answers) => Math.Abs(Alone(cause, answers) - Alone(cause, answers, blind: true));

    /// <summary>The chance of a common cause by what was answered, and unless blind by what was seen, as if it were told of alone.</summary>
    private double Alone(CommonCause cause, IEnumerable<(IntakeQuestion Question, string Answer, double Doubt)> answers, bool blind = false)
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

        foreach (var (id, chances) in blind ? [] : _seen)
        {
            var rows = cause.Likelier.Where(l => l.Aspect == id).ToArray();
            if (rows.Length > 0)
            {
                Condition[] conditions = Conditions(id);
                double[] times = [.. conditions.Select(c => rows.FirstOrDefault(r => r.Conditions.Values.Contains(c.Id))?.Times ?? 1)];
                double[] apart = [.. conditions.Zip(times, (c, t) => c.Prior / (1 - cause.Prior + cause.Prior * t))];
                double[] there = [.. apart.Zip(times, (p, t) => p * t)];
                double Seen(double[] faults) => (1 - faults.Sum()) * chances[0] + faults.Zip(chances.Skip(1), (p, c) => p * c).Sum();
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

    /// <summary>The world in which one thing is amiss.</summary>
    private sealed class Only(string amiss, int state) : IWorld
    {
        public int Draw(string name, double[] chances) => name == amiss ? state : 0;
    }
}
