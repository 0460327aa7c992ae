using System.Globalization;
using Undercowl.Diagnosis.Answers;
using Undercowl.Jobs;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Fixtures;

/// <summary>Writes a job entry by entry, as a person at a terminal would, through the same drafting.</summary>
internal sealed class Story
{
    private readonly EntryWriter _writer;
    private readonly Workbench _workbench;
    private (Job Of, IReadOnlyList<CauseBelief> Causes)? _causes;

    public Story(Workbench workbench, string layout, string complaint, string device = "dock")
    {
        _workbench = workbench;
        _writer = Writer(device, 1);
        Job = Job.Empty;
        Record(workbench.Opening(layout, complaint));
    }

    /// <summary>Goes on from a job that another story told, on another device.</summary>
    public Story(Story other, Job from)
    {
        _workbench = other._workbench;
        _writer = Writer("yard", 2);
        Job = from;
    }

    public Job Job { get; private set; }

    public List<string> Warnings { get; } = [];

    public JobDiagnosis Diagnosis => _workbench.Open(Job);

    public static EntryWriter Writer(string device, int seed)
    {
        var random = new Random(seed);
        return new EntryWriter(device, new Ticking(), random.NextBytes);
    }

    public Story Record(EntryBody body)
    {
        Job = Job.With(_writer.Next(Job, body));
        return this;
    }

    public Story Find(string check, string reading, string? at = null, params (string Key, string Value)[] setUp) =>
        Find(new SaidFinding(check, reading, at) { SetUp = setUp.Length == 0 ? null : setUp.ToDictionary(s => s.Key, s => s.Value) });

    public Story Find(SaidFinding said) => Take(Drafting.Finding(Diagnosis, said));

    public Story Swap(string part, string a, string b, string? then = null) => Take(Drafting.Swap(Diagnosis, part, a, b, then));

    public Story Remedy(string action, string? at = null, string? output = null, string? result = null) => Take(Drafting.Remedy(Diagnosis, action, at, output, result));

    /// <summary>The same reading at each of these cylinders.</summary>
    public Story FindAll(string check, string reading, IEnumerable<int> cylinders, params (string Key, string Value)[] setUp)
    {
        foreach (var cylinder in cylinders)
        {
            Find(check, reading, $"cyl:{cylinder}", setUp);
        }

        return this;
    }

    public IEnumerable<int> Cylinders => Enumerable.Range(1, Diagnosis.Layout.Cylinders);

    /// <summary>What is proposed next, best first.</summary>
    public IReadOnlyList<ProposedStep> Next(int top = 3) => Diagnosis.Next(top).Proposals;

    /// <summary>The first proposal is one of these checks or remedies.</summary>
    public Story ProposesFirst(params string[] ids) => Proposes(1, p => ids.Contains(p.Id), string.Join(" or ", ids));

    /// <summary>One of these checks or remedies is among the first three proposals.</summary>
    public Story ProposesSoon(params string[] ids) => Proposes(3, p => ids.Contains(p.Id), string.Join(" or ", ids));

    /// <summary>Such a step is among the first <paramref name="top"/> proposals.</summary>
    public Story Proposes(int top, Func<ProposedStep, bool> such, string what)
    {
        var steps = Next(8);
        if (!steps.Take(top).Any(such))
        {
            Assert.Fail(string.Join(Environment.NewLine, [
                $"Not among the first {top} proposals: {what}.",
                .. steps.Select(p => $"  {p.ExpectedCostToFinish:0.00} {p.Kind} {p.Id} {p.Place} {p.With} ({p.Cost:0.00}) {p.Why}"),
                .. Causes.Take(10).Select(c => $"  now {c.Now:0.0000} {c.Cause}")]));
        }

        return this;
    }

    public Story SetUp(string key, string value) => Take(Drafting.SetUp(Diagnosis, new Dictionary<string, string> { [key] = value }));

    /// <summary>All causes, most probable now first: those of the belief, without its joint explanations.</summary>
    public IReadOnlyList<CauseBelief> Causes
    {
        get
        {
            if (_causes is not { } known || known.Of != Job)
            {
                _causes = known = (Job, Diagnosis.Belief.Causes());
            }

            return known.Causes;
        }
    }

    public double AsFound(string cause) => Causes.Single(c => c.Cause == cause).AsFound;

    public double Now(string cause) => Causes.Single(c => c.Cause == cause).Now;

    private Story Take(Draft draft)
    {
        Warnings.AddRange(draft.Warnings);
        foreach (var body in draft.Bodies)
        {
            Record(body is Finding { Occasion: "" } finding ? finding with { Occasion = Job.Entries[^1].Id.ToString() } : body);
        }

        return this;
    }

    private sealed class Ticking : TimeProvider
    {
        private DateTimeOffset _now = DateTimeOffset.Parse("2026-05-01T08:00:00Z", CultureInfo.InvariantCulture);

        public override DateTimeOffset GetUtcNow() => _now = _now.AddSeconds(61);
    }
}
