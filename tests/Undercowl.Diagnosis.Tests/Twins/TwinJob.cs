using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Tests.Twins;

/// <summary>A job's entries gone through in order: in which state and set-up each finding was taken, and what it reads there.</summary>
internal sealed class TwinJob
{
    private readonly KnowledgeBase _knowledge;
    private readonly EngineLayout _layout;
    private readonly IWorld _world;
    private readonly Dictionary<EntryId, TwinEngine.Copy> _copies = [];
    private readonly Dictionary<EntryId, Reads?> _reads = [];

    /// <summary>What remedies have acted on since the complaint was last tried.</summary>
    private readonly List<TwinAspect> _mended = [];

    public TwinJob(KnowledgeBase knowledge, EngineLayout layout, IWorld world, Job job)
    {
        (_knowledge, _layout, _world) = (knowledge, layout, world);
        Entries = [.. job.Entries.Intersect(Standing(job))];
        Interview = new TwinInterview(knowledge, layout, Entries);
        Engine = new TwinEngine(knowledge, layout, world, Interview);
        Now = TwinState.AsItCameIn;
        var said = Entries.Select(e => e.Body).OfType<Opened>().Select(o => o.Complaint).ToArray();
        var tried = Now;
        foreach (var entry in Entries)
        {
            var came = Came(entry);
            var before = Now;
            Now = Engine.After(Now, entry, came);
            switch (entry.Body)
            {
                case Jobs.Remedy remedy:
                    var mends = Engine.After(before, entry);
                    _mended.AddRange(Engine.Aspects.Where(a => !a.Aspect.Consequence && Name(before, a) != Name(mends, a)));
                    if (came is { } known)
                    {
                        Results.AddRange(said.SelectMany(c => Told(c, remedy, known, tried, Now, [.. _mended.DistinctBy(a => a.Name)], entry.Id.ToString())));
                        tried = Now;
                        _mended.Clear();
                    }

                    break;
                case Finding finding:
                    _copies[entry.Id] = Engine.In(Now, finding.SetUp);
                    _reads[entry.Id] = Read(Now, finding, _copies[entry.Id]);
                    break;
                case Opened opened:
                    Complaints.AddRange(Complained(opened.Complaint));
                    break;
                default:
                    break;
            }
        }
    }

    public TwinEngine Engine { get; }

    public TwinInterview Interview { get; }

    public TwinState Now { get; }

    /// <summary>The entries that were not taken back, in order.</summary>
    public IReadOnlyList<Entry> Entries { get; }

    /// <summary>What was complained of: how bad it is, and the chance of such a complaint by level.</summary>
    public List<(Func<int> Level, double[] PerLevel)> Complaints { get; } = [];

    /// <summary>What came of remedies: the chance of what was said of each.</summary>
    public List<Func<double>> Results { get; } = [];

    /// <summary>The chance of what was answered in the interview, in the world as it is.</summary>
    public double Answered()
    {
        var said = Entries.Select(e => e.Body).OfType<Opened>().First().Complaint;
        var copy = Engine.In(TwinState.AsItCameIn, said.SetUp.Count > 0 ? said.SetUp : _knowledge.Complaints.First(c => c.Id == said.Id).SetUp);
        return Interview.Likelihood(_world, id => _knowledge.Quantities.First(q => q.Id == id).Levels[Engine.Level(copy, id, 0)]);
    }

    /// <summary>What a finding reads: level of a quantity, condition of a part or of a tool. Null when there is no such part.</summary>
    public Reads? Read(Entry finding) => _reads[finding.Id];

    /// <summary>Level of a quantity of the engine in the state and set-up of a finding.</summary>
    public Reads Reach(Entry finding, string quantity) => Level(_copies[finding.Id], quantity, 0);

    /// <summary>Whether the finding's tool has faults of its own that make it read as if all were lost.</summary>
    public bool CanBeFooled(Entry finding) => Erring(finding) is not null;

    /// <summary>Whether the finding's tool reads as if all were lost: it does so for every reading taken with it.</summary>
    public bool Fooled(Entry finding) =>
        Erring(finding) is { } tool && ToolCondition(tool, tool.Aspects[0]) is > 0 and var c && tool.Aspects[0].Conditions[c - 1].ReadsAsWorst;

    /// <summary>From the last entry to the first: an entry is out when a withdrawal that is not out itself names it.</summary>
    private static IEnumerable<Entry> Standing(Job job)
    {
        var takenBack = new HashSet<EntryId>();
        foreach (var entry in job.Entries.Reverse())
        {
            if (entry.Body is Withdrawn withdrawn && !takenBack.Contains(entry.Id))
            {
                takenBack.Add(withdrawn.Entry);
            }
        }

        return job.Entries.Where(e => !takenBack.Contains(e.Id));
    }

    private Check Check(Finding finding) => _knowledge.Checks.First(c => c.Id == finding.Check);

    private Tool? Erring(Entry finding) => Check((Finding)finding.Body) is { Likelihood.Tool: null } check
        ? _knowledge.Tools.FirstOrDefault(t => t.Id == ((Finding)finding.Body).Tool && check.Tools.Any(c => c == t.InsteadOf))
            ?? _knowledge.Tools.FirstOrDefault(t => check.Tools.Contains(t.Id) && t.Aspects.Count > 0) : null;

    private int ToolCondition(Tool tool, ToolAspect aspect) => _world.Draw(
        $"{tool.Id}.{aspect.Id}", [1 - aspect.Conditions.Sum(c => c.Prior), .. aspect.Conditions.Select(c => c.Prior)]);

    private Reads? Read(TwinState state, Finding finding, TwinEngine.Copy copy)
    {
        var reads = Check(finding).Likelihood;
        if (reads.Quantity is { } quantity)
        {
            LayoutPlaces.TryCylinders(_layout, finding.Place.Text, out var lanes);
            return Level(copy, quantity, lanes[0]);
        }

        if (reads.Tool is { } tool)
        {
            var owner = _knowledge.Tools.First(t => t.Aspects.Any(a => tool == $"{t.Id}.{a.Id}"));
            return new Reads(tool, () => ToolCondition(owner, owner.Aspects[0]));
        }

        return Engine.Sitting(state, reads.Aspect!, finding.Place.Text) is { } aspect
            ? new Reads($"{aspect.Name} in {copy.Name}", () => Engine.Condition(state, aspect)) : null;
    }

    private Reads Level(TwinEngine.Copy copy, string quantity, int lane) => new($"{quantity} {lane} in {copy.Name}", () => Engine.Level(copy, quantity, lane));

    /// <summary>What was said of a remedy: the last word on it, or the one noted with it.</summary>
    private RemedyResult? Came(Entry entry) => entry.Body is not Jobs.Remedy remedy ? null
        : Entries.Select(e => e.Body).OfType<Result>().LastOrDefault(r => r.Of == entry.Id)?.Came ?? remedy.Result;

    private static string? Name(TwinState state, TwinAspect aspect) => state.Version.TryGetValue(aspect.Name, out var version) ? version.Name : null;

    /// <summary>The chance of what was said: the complaint's test read good or not, or the complaint is made again; better with one chance if something was mended, with another if not.</summary>
    private IEnumerable<Func<double>> Told(Jobs.Complaint said, Jobs.Remedy remedy, RemedyResult came, TwinState before, TwinState after, TwinAspect[] touched, string entry)
    {
        var complaint = _knowledge.Complaints.First(c => c.Id == said.Id);
        var test = _knowledge.Checks.First(c => c.Id == complaint.SystemTest);
        var levels = _knowledge.Quantities.First(q => q.Id == test.Likelihood.Quantity).Levels;
        var doubt = _knowledge.Hands.FirstOrDefault(h => h.Id == remedy.Hand)?.Doubt ?? 0;
        var setUp = new Dictionary<string, string>(said.SetUp.Count > 0 ? said.SetUp : complaint.SetUp);
        foreach (var (key, value) in test.SetUp)
        {
            setUp[key] = value;
        }

        double Good(TwinState state) => test.Choices.Where(c => complaint.Good.Contains(c.Id)).Sum(c =>
            (1 - doubt) * test.Likelihood.Given[levels[Engine.Level(Engine.In(state, setUp), test.Likelihood.Quantity!, 0)]].GetValueOrDefault(c.Id) + doubt / test.Choices.Count);

        var again = Engine.In(after, said.SetUp.Count > 0 ? said.SetUp : complaint.SetUp);
        double Again() => complaint.Given[_knowledge.Quantities.First(q => q.Id == complaint.Quantity).Levels[Engine.Level(again, complaint.Quantity, 0)]];
        bool Mended() => touched.Any(a => Engine.Condition(before, a) > 0 && Engine.Condition(after, a) == 0);
        double Better() => _knowledge.Results.First(r => r.Name == (Mended() ? "noticed" : "hoped")).Value;
        switch (came)
        {
            case RemedyResult.Cured:
                return [() => Good(after)];
            case RemedyResult.NewFault:
                return [() => 1 - Good(after)];
            case RemedyResult.ForATime:
                var (first, then) = (Engine.Later(after, $"{entry} for a time"), Engine.Later(after, $"{entry} came back"));
                return [() => Good(first), () => 1 - Good(then)];
            case RemedyResult.InPart:
                return [() => (1 - Good(after)) * Better()];
            default:
                return [() => Again() * (1 - Better())];
        }
    }

    /// <summary>The complaint itself, and what it says of other times.</summary>
    private IEnumerable<(Func<int> Level, double[] PerLevel)> Complained(Jobs.Complaint said)
    {
        var complaint = _knowledge.Complaints.First(c => c.Id == said.Id);
        return
        [
            Said(Engine.In(TwinState.AsItCameIn, complaint.SetUp), complaint.Quantity, complaint.Given),
            .. complaint.Also.Select((b, i) => Said(Engine.In(Engine.AnotherMoment($"another moment {i}"), b.SetUp), b.Quantity, b.Given)),
        ];

        (Func<int> Level, double[] PerLevel) Said(TwinEngine.Copy copy, string quantity, Dictionary<string, double> given) =>
            (() => Engine.Level(copy, quantity, 1), [.. _knowledge.Quantities.First(q => q.Id == quantity).Levels.Select(l => given[l])]);
    }
}

/// <summary>What is read: equal names read the same, other names may.</summary>
internal sealed record Reads(string What, Func<int> Level);
