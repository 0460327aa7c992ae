using System.Globalization;
using System.Text;
using Undercowl.Cli.Tests.Fixtures;
using Undercowl.Diagnosis;
using Undercowl.Diagnosis.Beliefs;
using Undercowl.Diagnosis.Readings;
using Undercowl.Inference;
using Undercowl.Jobs;
using Undercowl.Physics;
using Xunit;

namespace Undercowl.Cli.Tests.Docs;

/// <summary>
/// docs/one-finding.md, run as it stands: its commands are typed, and every number of its tables is the program's. Recorded:
/// the page follows the knowledge, and when that moves the test says what the page must say.
/// </summary>
public sealed class OneFindingTests
{
    private const string File = "visit.jsonl";

    [Fact]
    public void The_page_says_what_the_program_does()
    {
        var page = Repository.Read("docs/one-finding.md");
        string[] typed = [.. Blocks(page, "sh").SelectMany(b => b.Split('\n', StringSplitOptions.RemoveEmptyEntries))];
        var line = Assert.Single(Blocks(page, "json")).Trim();
        var rows = page.Split('\n').Where(l => l.StartsWith("| ", StringComparison.Ordinal) && !l.StartsWith("| --", StringComparison.Ordinal) && !l.StartsWith("| what |", StringComparison.Ordinal)).ToArray();

        using var program = new InProcess();
        var at = Array.FindIndex(typed, t => t.Contains(" --at cyl:2 ", StringComparison.Ordinal));
        foreach (var command in typed.Take(at + 1))
        {
            program.Type(command);
        }

        var job = program.Job(File);
        Assert.True(job.Entries[^1].Text == line, $"docs/one-finding.md has another line than the program writes:\n{job.Entries[^1].Text}");
        var expected = Finding(program.Knowledge.Bench, job);
        Assert.Equal("undercowl remedy", string.Join(' ', Assert.Single(typed.Skip(at + 1)).Split(' ').Take(2)));
        program.Type(typed[^1]);
        expected.AddRange(AfterRemedy(program.Knowledge.Bench, program.Job(File)));
        Assert.True(expected.SequenceEqual(rows), $"docs/one-finding.md has other numbers than the program. Its rows should read:\n{string.Join('\n', expected)}");
    }

    private static List<string> Finding(Workbench bench, Job job)
    {
        var diagnosis = bench.Open(job);
        var network = diagnosis.Network;
        var laid = network.Laid[^1];
        var before = bench.Open(Without(job)).BeliefNow();
        var finding = laid.Finding;
        var rows = new List<string>();

        Row("length of the line, its line end included", $"{job.Entries[^1].Line.Length + 1} bytes");
        Row("entries that it follows, directly and through others", $"{finding.Entry.Parents.Count} and {job.Count - 1}");
        Row("whole set-up that it was taken in", string.Join(", ", finding.Body.SetUp.Select(p => $"{p.Key} {p.Value}")));
        Row("swaps and remedies before it", (diagnosis.Projection.All<Swap>().Count() + diagnosis.Projection.All<Remedy>().Count()).ToString(CultureInfo.InvariantCulture));
        Row("its occasion", finding.Body.Occasion);

        var circumstances = laid.Reading.Circumstances;
        var gap = double.Parse(finding.Body.SetUp["gap"].Split(' ')[0], CultureInfo.InvariantCulture);
        Row("air density at 4 °C, relative to 20 °C", Number(circumstances.AirDensity, "0.0000"));
        Row($"breakdown of {Number(gap, "0")} mm between the tester's points in this air", Number(TesterGap.BreakdownKilovolts(circumstances.Shape!.Value, gap, circumstances.AirDensity), "0.00") + " kV");
        var likelihood = ReadingLikelihood.Of(new ReadingGroup(laid.Check, laid.Levels, laid.Doubt, [laid.Reading], laid.Kilovolts))!;
        for (var level = 0; level < laid.Levels.Count; level++)
        {
            Row($"chance of \"never\" when the lead's voltage is {laid.Levels[level]} ({Number(laid.Kilovolts![level] ?? 0, "0.#")} kV)", Number(likelihood[level], "0.0000"));
        }

        Row("nodes of the network, findings and complaint on it", $"{network.Network.Count} and {network.Evidence().Count}");
        var (prior, posterior) = (Levels(network, laid, with: false), Levels(network, laid, with: true));
        for (var level = 0; level < laid.Levels.Count; level++)
        {
            Row($"lead's voltage {laid.Levels[level]}: before, after", $"{Number(prior[level], "0.0000")}, {Number(posterior[level], "0.0000")}");
        }

        var belief = diagnosis.BeliefNow();
        Row("how exact", belief.Approximate ? "approximate" : "exact");
        foreach (var cause in belief.Causes.Where(c => !c.Consequence).Take(3))
        {
            Row($"{cause.Name}: prior, before, as found, now", $"{Number(cause.Prior, "0.0000")}, {Number(before.Causes.Single(c => c.Cause == cause.Cause).AsFound, "0.0000")}, {Number(cause.AsFound, "0.0000")}, {Number(cause.Now, "0.0000")}");
        }

        var leading = belief.Causes.First(c => !c.Consequence);
        var why = diagnosis.Why(leading.Cause);
        Row("what it weighed for the first of them", Number(why.Weights[^1].Stepwise, "+0.0;-0.0") + " decibans");
        Assert.Equal(Decibans.Of(leading.AsFound) - Decibans.Of(before.Causes.Single(c => c.Cause == leading.Cause).AsFound), why.Weights[^1].Stepwise, 1e-6);
        var next = diagnosis.Next(1).Proposals[0];
        Row("next step", next.Name);
        Row("expected cost to finish with it", Number(next.ExpectedCostToFinish, "0") + " " + diagnosis.Next(1).Currency);
        return rows;

        void Row(string what, string value) => rows.Add($"| {what} | {value} |");
    }

    private static IEnumerable<string> AfterRemedy(Workbench bench, Job job)
    {
        var done = Assert.IsType<Remedy>(job.Entries[^1].Body);
        var part = bench.Knowledge.Remedies.Single(r => r.Id == done.Action).Part;
        var cause = bench.Open(job).BeliefNow().Causes.Where(c => c.Part == part).MaxBy(c => c.AsFound)!;
        yield return $"| {cause.Name}: as found, now | {Number(cause.AsFound, "0.0000")}, {Number(cause.Now, "0.0000")} |";
    }

    /// <summary>What the lead's voltage was believed to be in the finding's own set-up, without and with the finding.</summary>
    private static double[] Levels(JobNetwork network, LaidFinding laid, bool with)
    {
        var posterior = Elimination.Run(network.Evidence(l => with || !ReferenceEquals(l, laid)), JobNetwork.Options with { Wanted = [laid.Signal.Node] });
        var marginal = posterior.Marginal(laid.Signal.Node);
        var levels = new double[laid.Levels.Count];
        for (var s = 0; s < laid.Signal.Map.Length; s++)
        {
            levels[laid.Signal.Map[s]] += marginal[s];
        }

        return levels;
    }

    private static Job Without(Job job) => Job.Parse(Encoding.UTF8.GetBytes(string.Concat(job.Entries.Take(job.Count - 1).Select(e => e.Text + "\n")))).Whole();

    private static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);

    private static IEnumerable<string> Blocks(string page, string language) =>
        page.Split("```").Where((_, i) => i % 2 == 1).Where(b => b.StartsWith(language + "\n", StringComparison.Ordinal)).Select(b => b[(language.Length + 1)..]);
}
