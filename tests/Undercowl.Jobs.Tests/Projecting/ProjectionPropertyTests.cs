using CsCheck;

namespace Undercowl.Jobs.Tests.Projecting;

public sealed class ProjectionPropertyTests
{
    [Fact]
    public void Ancestors_and_independence_are_those_of_the_slow_way() => Simulation.Steps(120).Sample(
        steps =>
        {
            var job = Simulation.Run(steps).Aggregate((a, b) => a.Merge(b));
            var (fast, slow) = (Projection.Of(job), new SlowProjection(job));
            foreach (var one in job.Entries)
            {
                foreach (var other in job.Entries)
                {
                    Assert.Equal(slow.Precedes(one.Id, other.Id), fast.Precedes(one.Id, other.Id));
                    Assert.Equal(
                        one != other && !slow.Precedes(one.Id, other.Id) && !slow.Precedes(other.Id, one.Id), fast.Independent(one.Id, other.Id));
                }
            }
        },
        iter: 60);

    [Fact]
    public void Entries_hold_and_findings_have_behind_them_what_the_slow_way_says() => Simulation.Steps(30).Sample(
        steps =>
        {
            var job = Simulation.Run(steps).Aggregate((a, b) => a.Merge(b));
            var (fast, slow) = (Projection.Of(job), new SlowProjection(job));
            Assert.Equal(job.Entries.Where(entry => slow.Holds(entry)), fast.Live);
            Assert.Equal(job.Entries.Where(entry => !slow.Holds(entry)), fast.Withdrawn.Select(pair => pair.Entry));
            Assert.Equal(fast.Live.Where(entry => entry.Body is Finding), fast.Findings.Select(finding => finding.Entry));
            foreach (var finding in fast.Findings)
            {
                Assert.Equal(slow.Behind<Swap>(finding.Entry), finding.Swaps.Select(said => said.Id));
                Assert.Equal(slow.Behind<Remedy>(finding.Entry), finding.Remedies.Select(said => said.Id));
                Assert.Equal(slow.Behind<SetUpChange>(finding.Entry), finding.SetUpChanges.Select(said => said.Id));
                Assert.Equal(slow.Behind<Occasion>(finding.Entry), finding.Occasions.Select(said => said.Id));
            }
        },
        iter: 200);

    [Fact]
    public void Withdrawing_reinterprets_what_the_slow_way_says_and_what_really_changes() => Simulation.Steps(20).Sample(
        steps =>
        {
            var job = Simulation.Run(steps).Aggregate((a, b) => a.Merge(b));
            var (before, slow) = (Projection.Of(job), new SlowProjection(job));
            foreach (var entry in job.Entries)
            {
                var told = before.Reinterpreted(entry.Id).Select(finding => finding.Id).ToArray();
                Assert.Equal(slow.Reinterpreted(entry.Id), told);

                // And it is what comes out when the withdrawal is really recorded after everything else.
                var after = Projection.Of(job.With(new EntryWriter("late", new SetClock(), Seeded.Random(5)).Next(job, new Withdrawn(entry.Id, "mistaken"))));
                var changed = before.Findings.Join(after.Findings, finding => finding.Id, finding => finding.Id, (old, now) => (old, now))
                    .Where(pair => !Behind(pair.old).SequenceEqual(Behind(pair.now))).Select(pair => pair.old.Id);
                Assert.Equal(changed, told);
            }
        },
        iter: 60);

    private static IEnumerable<EntryId> Behind(FindingInContext finding) => finding.Swaps.Select(said => said.Id).Concat(finding.Remedies.Select(said => said.Id));
}
