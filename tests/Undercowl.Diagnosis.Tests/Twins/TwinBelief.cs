using Undercowl.Diagnosis.Readings;
using Undercowl.Jobs;
using Undercowl.Knowledge;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Twins;

/// <summary>
/// The belief of a job by going through every possible world. What errs together, what was reached and what each reading
/// reads is worked out here from the entries; only the numbers of a group of readings are the product's.
/// </summary>
internal static class TwinBelief
{
    private const double Tolerance = 1e-10;

    /// <summary>Chance that a reading was written down although its set-up was not reached: 100 to 1 against, as the document says.</summary>
    private const double NotReached = 0.01;

    /// <summary>Every condition as found and now, and the weight of the evidence, are those of the diagnosis.</summary>
    /// <param name="workbench">The product.</param>
    /// <param name="knowledge">The workbench's knowledge, where every condition has a chance.</param>
    /// <param name="job">One device's, its entries in order.</param>
    /// <returns>How many worlds there are.</returns>
    public static long Compare(Workbench workbench, KnowledgeBase knowledge, Job job)
    {
        var diagnosis = workbench.Open(job);
        var world = new Choosing();
        var twin = new TwinJob(workbench.Knowledge, diagnosis.Layout, world, job);
        var alike = new Alike(knowledge, diagnosis.Layout, job);
        var groups = Groups(diagnosis, alike);
        var reached = Reached(knowledge, alike, twin);
        // What cannot be otherwise on this engine says nothing.
        var complaints = twin.Complaints.Where((_, i) => alike.Varies(new Reads($"complaint {i}", alike.Job.Complaints[i].Level))).ToArray();
        double[][] asFound = [.. twin.Engine.Aspects.Select(a => new double[a.Chances.Length])];
        double[][] now = [.. asFound.Select(a => new double[a.Length])];
        double[] befell = new double[twin.Interview.Tied.Length];
        var total = 0.0;
        var worlds = world.All(() =>
        {
            foreach (var (level, perLevel) in complaints)
            {
                world.Multiply(perLevel[level()]);
            }

            foreach (var chance in twin.Results)
            {
                world.Multiply(chance());
            }

            foreach (var (first, likelihood) in groups)
            {
                world.Multiply(likelihood[twin.Fooled(first) ? ^1 : twin.Read(first)!.Level()]);
            }

            foreach (var (reads, perLevel) in reached)
            {
                world.Multiply(perLevel[reads.Level()]);
            }

            var conditions = Array.ConvertAll(twin.Engine.Aspects, a => (AsFound: twin.Engine.AsFound(a), Now: twin.Engine.Condition(twin.Now, a)));
            var befallen = Array.ConvertAll(twin.Interview.Tied, c => TwinInterview.Befell(world, c));
            world.Multiply(twin.Answered());
            world.Multiply(twin.Engine.Aspects.Select((a, i) => twin.Interview.Apartly(a, conditions[i].AsFound)).Aggregate(1.0, (x, y) => x * y));
            for (var a = 0; a < conditions.Length; a++)
            {
                asFound[a][conditions[a].AsFound] += world.Weight;
                now[a][conditions[a].Now] += world.Weight;
            }

            for (var c = 0; c < befell.Length; c++)
            {
                befell[c] += befallen[c] ? world.Weight : 0;
            }

            total += world.Weight;
        });

        Assert.Equal(twin.Engine.Aspects.Select(a => a.Name).Order(), diagnosis.Network.Model.Aspects.Select(a => a.Id).Order());
        Assert.Equal(Math.Log(total), diagnosis.Belief.Posterior.LogEvidence, 1e-9);
        foreach (var (index, aspect) in twin.Engine.Aspects.Index())
        {
            var product = diagnosis.Network.Model.Aspects.Single(a => a.Id == aspect.Name);
            for (var s = 0; s < aspect.Chances.Length; s++)
            {
                Assert.True(
                    Math.Abs(asFound[index][s] / total - diagnosis.Belief.AsFound(product, s)) <= Tolerance
                    && Math.Abs(now[index][s] / total - diagnosis.Belief.Now(product, s)) <= Tolerance,
                    $"{product.CauseId(s)} as found: {asFound[index][s] / total:R} of all worlds, believed {diagnosis.Belief.AsFound(product, s):R}; "
                    + $"now: {now[index][s] / total:R} of all worlds, believed {diagnosis.Belief.Now(product, s):R}");
            }
        }

        foreach (var (index, cause) in twin.Interview.Tied.Index())
        {
            Assert.Equal(befell[index] / total, diagnosis.BeliefNow().CommonCauses.Single(c => c.Id == cause.Id).Probability, Tolerance);
        }

        Assert.All(twin.Interview.Apart, c => Assert.Equal(c.After, diagnosis.BeliefNow().CommonCauses.Single(b => b.Id == c.Cause.Id).Probability, Tolerance));
        return worlds;
    }

    /// <summary>
    /// Readings that err together: one check at one place with one tool by one hand (who tells what another saw is another), of
    /// copies that are the same function of the same causes. Each group by one of its findings, with its likelihood; those that say nothing are left out.
    /// </summary>
    private static List<(Entry First, double[] Likelihood)> Groups(JobDiagnosis diagnosis, Alike alike)
    {
        var found = new List<(Entry, double[])>();
        foreach (var same in alike.Job.Entries
            .Where(e => e.Body is Finding && alike.Job.Read(e) is not null)
            .GroupBy(e => ((Finding)e.Body) is var f ? (f.Check, f.Place, f.Output, f.Tool, f.Hand, f.Hearsay) : default))
        {
            foreach (var group in alike.Groups(same, e => alike.Job.Read(e)!))
            {
                var first = group[0];
                LaidFinding[] laid = [.. group.Select(e => diagnosis.Network.Laid.Single(l => l.Finding.Id == e.Id))];
                var likelihood = ReadingLikelihood.Of(
                    new ReadingGroup(laid[0].Check, laid[0].Levels, laid[0].Doubt, [.. laid.Select(l => l.Reading)], laid[0].Kilovolts));
                if (likelihood is not null && (alike.Job.CanBeFooled(first) || alike.Varies(alike.Job.Read(first)!)))
                {
                    found.Add((first, likelihood));
                }
            }
        }

        return found;
    }

    /// <summary>What was reached, once for each copy of the quantity that might have forbidden it; of several set-ups what asks most.</summary>
    private static List<(Reads Reads, double[] PerLevel)> Reached(KnowledgeBase knowledge, Alike alike, TwinJob twin)
    {
        var all = new List<(Entry Finding, string Quantity, double[] PerLevel)>();
        foreach (var entry in twin.Entries)
        {
            if (entry.Body is not Finding { Value: not NotDoneReading } finding || alike.Job.Read(entry) is null)
            {
                continue;
            }

            foreach (var (key, text) in finding.SetUp)
            {
                var value = knowledge.SetUps.FirstOrDefault(k => k.Id == key)?.Values.FirstOrDefault(v => v.Id == text);
                foreach (var (quantity, forbid) in value?.Impossible ?? [])
                {
                    double[] perLevel = [.. knowledge.Quantities.First(q => q.Id == quantity).Levels.Select(l => forbid.Contains(l) ? NotReached : 1)];
                    if (alike.Varies(alike.Job.Reach(entry, quantity)))
                    {
                        all.Add((entry, quantity, perLevel));
                    }
                }
            }
        }

        return [.. all.GroupBy(r => r.Quantity)
            .SelectMany(q => alike.Groups(q, r => alike.Job.Reach(r.Finding, r.Quantity)))
            .Select(g => (twin.Reach(g[0].Finding, g[0].Quantity), g.Select(r => r.PerLevel).Aggregate((a, b) => [.. a.Zip(b, Math.Min)])))];
    }

    /// <summary>Tells whether levels are the same function of the same causes: by their levels in many supposed worlds.</summary>
    private sealed class Alike
    {
        private readonly Supposed _world = new();

        public Alike(KnowledgeBase knowledge, EngineLayout layout, Job job) => Job = new TwinJob(knowledge, layout, _world, job);

        public TwinJob Job { get; }

        public bool Varies(Reads reads)
        {
            _world.Suppose(0);
            var first = reads.Level();
            return !Enumerable.Range(0, Supposed.Worlds).All(w =>
            {
                _world.Suppose(w);
                return reads.Level() == first;
            });
        }

        public List<List<T>> Groups<T>(IEnumerable<T> all, Func<T, Reads> of)
        {
            var groups = new List<List<T>>();
            foreach (var one in all)
            {
                var group = groups.Find(g => Same(of(g[0]), of(one)));
                if (group is null)
                {
                    groups.Add(group = []);
                }

                group.Add(one);
            }

            return groups;
        }

        private bool Same(Reads a, Reads b) => a.What == b.What || Enumerable.Range(0, Supposed.Worlds).All(w =>
        {
            _world.Suppose(w);
            return a.Level() == b.Level();
        });
    }
}
