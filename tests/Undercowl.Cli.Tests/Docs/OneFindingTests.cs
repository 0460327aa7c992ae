using System.Globalization;
using System.Text.Json;
using System.Xml.Linq;
using Undercowl.Cli.Tests.Fixtures;
using Undercowl.Jobs;
using Undercowl.Physics;
using Xunit;

namespace Undercowl.Cli.Tests.Docs;

/// <summary>
/// docs/one-finding.md is what the program does: its commands are run in order and all that is printed and every figure
/// is worked out anew. With UNDERCOWL_WRITE_PAGES set the page is written afresh instead of being compared.
/// </summary>
public sealed class OneFindingTests : IDisposable
{
    private const string PagePath = "docs/one-finding.md";
    private const string Coil = "ignition-coil@cyl:2.winding=open";

    /// <summary>The page's formula takes the integral whole; the program sums it in 81 steps over four spreads, which the edge of a step shifts by up to half a step's weight.</summary>
    private const double IntegrationError = 0.02;

    private static readonly string[] Levels = ["strong", "fair", "weak", "none"];

    private readonly Desk _desk = new();
    private readonly List<double> _coil = [];

    [Fact]
    public void The_page_reads_as_the_program_does_to_the_last_figure()
    {
        var page = Repository.Read(PagePath);
        var worked = WorkedPage.Worked(page, _desk.Run, Figure);
        if (Environment.GetEnvironmentVariable("UNDERCOWL_WRITE_PAGES") is { Length: > 0 })
        {
            File.WriteAllText(Repository.PathOf(PagePath), worked);
        }
        else
        {
            Assert.Equal(worked, page);
        }
    }

    [Fact]
    public void The_likelihood_in_the_network_is_that_of_the_formula_on_the_page_worked_out_otherwise()
    {
        Told();
        var (voltage, tool) = (Table("lead-voltage"), Likelihoods());
        var needed = Needed();
        var (spread, fresh) = (OfCheck("spread"), OfCheck("fresh"));
        var slip = 1 - (1 - Doubt()) * (1 - OfCheck("outlier"));
        double[] formula = [.. Levels.Select(level => Never(Kilovolts(level)))];
        Assert.Equal(4, voltage);
        for (var level = 0; level < formula.Length; level++)
        {
            Assert.Equal(formula[level] / formula[^1], tool[level, 0], IntegrationError);
            Assert.Equal(1, tool[level, 1], 1e-12);
        }

        double Never(double kilovolts)
        {
            var below = kilovolts == 0 ? 1 : Normal((Math.Log(needed) - 0.06 - Math.Log(kilovolts)) / spread);
            return (1 - slip) * ((1 - fresh) * below + fresh / 3) + slip / 3;
        }
    }

    [Fact]
    public void The_stepwise_weights_add_up_to_the_change_and_the_last_of_them_is_the_ratio_of_odds()
    {
        Told(before: 1);
        var before = Belief(Coil, "asFound");
        _desk.Run("undercowl record visit.jsonl spark-to-ground --at cyl:2 0 of 3").Good();
        var after = Belief(Coil, "asFound");
        var why = _desk.Run($"undercowl why visit.jsonl {Coil} --json").Json();
        double[] steps = [.. why.GetProperty("weights").EnumerateArray().Select(w => w.GetProperty("stepwise").GetDouble())];
        Assert.Equal(why.GetProperty("posteriorDecibans").GetDouble() - why.GetProperty("priorDecibans").GetDouble(), steps.Sum(), 1e-9);
        Assert.Equal(Decibans(after) - Decibans(before), steps[^1], 1e-9);
        Assert.True(steps[^1] > 10);
    }

    public void Dispose() => _desk.Dispose();

    /// <summary>The standard normal distribution function by Simpson's rule from -8; error below 1e-9.</summary>
    private static double Normal(double x)
    {
        const int steps = 2000;
        var width = (x + 8) / steps;
        var sum = 0.0;
        for (var i = 0; i <= steps; i++)
        {
            var t = -8 + i * width;
            sum += (i is 0 or steps ? 1 : i % 2 == 1 ? 4 : 2) * Math.Exp(-t * t / 2);
        }

        return sum * width / 3 / Math.Sqrt(2 * Math.PI);
    }

    private static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);

    private static double Decibans(double probability) => 10 * Math.Log10(probability / (1 - probability));

    /// <summary>The job of the page, all but the last <paramref name="before"/> findings.</summary>
    private void Told(int before = 0)
    {
        string[] lines = [.. Repository.Read(PagePath).Split('\n').Where(l => l.StartsWith("$ undercowl ", StringComparison.Ordinal)).Select(l => l[2..])
            .Where(l => l.Split(' ')[1] is "start" or "ambient" or "record")];
        Assert.Equal(5, lines.Length);
        Assert.All(lines.SkipLast(before), line => _desk.Run(line).Good());
    }

    private string Figure(string name) => name switch
    {
        "bytes of the line with its line feed" => Number(File.ReadAllText(_desk.PathOf("visit.jsonl")).TrimEnd('\n').Split('\n')[^1].Length + 1, "0"),
        "entries of the job" => Number(Projected().Job.Count, "0"),
        "findings" => Number(Projected().Findings.Count, "0"),
        "remedies and swaps before this finding" => Number(Projected().Findings[^1].Remedies.Count + Projected().Findings[^1].Swaps.Count, "0"),
        "occasion of this finding" => Projected().Findings[^1].Body.Occasion,
        "blunt points over needles" => Number(TesterGap.BluntPerNeedle, "0.###"),
        "spread s" => Number(OfCheck("spread"), "0.###"),
        "fresh error e" => Number(OfCheck("fresh"), "0.###"),
        "outlier" => Number(OfCheck("outlier"), "0.###"),
        "doubt of the technician" => Number(Doubt(), "0.###"),
        "gap, mm" => Number(Gap(), "0.##"),
        "density of the air over that at 20 °C" => Number(Density(), "0.000"),
        "u, kV" => Number(Needed(), "0.00"),
        "kV when strong" => Number(Kilovolts("strong"), "0.#"),
        "kV when fair" => Number(Kilovolts("fair"), "0.#"),
        "kV when weak" => Number(Kilovolts("weak"), "0.#"),
        "P(never, strong) over P(never, none)" => Number(Likelihoods()[0, 0], "0.0000"),
        "P(never, fair) over P(never, none)" => Number(Likelihoods()[1, 0], "0.0000"),
        "P(never, weak) over P(never, none)" => Number(Likelihoods()[2, 0], "0.0000"),
        "nodes in all" => Number(Nodes().Length, "0"),
        "of them conditions, of parts and tools" => Number(Nodes().Count(n => !n.Contains('#', StringComparison.Ordinal) && !IsEvidence(n)), "0"),
        "of them quantities" => Number(Nodes().Count(n => n.Contains('#', StringComparison.Ordinal)), "0"),
        "of them evidence" => Number(Nodes().Count(IsEvidence), "0"),
        "coil of cylinder 2 open, before this finding" => Number(Kept(CoilBefore()), "0.00000"),
        "coil of cylinder 2 open, after it" => Number(Kept(Belief(Coil, "asFound")), "0.00000"),
        "weight, decibans" => Number(Decibans(_coil[1]) - Decibans(_coil[0]), "0.0"),
        "coil of cylinder 2 open, as found" => Number(Belief(Coil, "asFound"), "0.00000"),
        "coil of cylinder 2 open, now" => Number(Belief(Coil, "now"), "0.00000"),
        "coil of cylinder 2 not sound in any way, now" => Number(NotSoundNow(), "0.00000"),
        _ => throw new ArgumentException($"The page has a figure \"{name}\" that is not worked out."),
    };

    private double Kept(double value)
    {
        _coil.Add(value);
        return value;
    }

    private Projection Projected() => Projection.Of(JobFile.Read(_desk.PathOf("visit.jsonl")).Whole());

    private double Gap() => double.Parse(Projected().Findings[^1].Body.SetUp["gap"].Split(' ')[0], CultureInfo.InvariantCulture);

    /// <summary>Ratio of the gas law: 293.15 K over the air's own temperature, at the pressure of a standard atmosphere.</summary>
    private double Density()
    {
        var air = Projected().Ambient;
        Assert.Equal("1013.25", air["pressure"].Value.Text);
        return 293.15 / (273.15 + (double)air["temperature"].Value.Value);
    }

    private double Needed() => TesterGap.BreakdownKilovolts(ElectrodeShape.BluntPoints, Gap(), Density());

    private static double Kilovolts(string level) => Known("quantities", "lead-voltage").GetProperty("numbers").EnumerateArray()
        .First(n => n.GetProperty("level").GetString() == level
            && (!n.TryGetProperty("only", out var only) || !only.TryGetProperty("ignition", out var ignition) || ignition.ToString().Contains("alternator-cdi", StringComparison.Ordinal)))
        .GetProperty("value").GetDouble();

    private static double OfCheck(string number) => Known("checks", "spark-to-ground").GetProperty("likelihood").GetProperty(number).GetDouble();

    private static double Doubt() => Known("hands", "technician").GetProperty("doubt").GetDouble();

    private static JsonElement Known(string folder, string id)
    {
        using var knowledge = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "knowledge.json")));
        return knowledge.RootElement.GetProperty(folder).EnumerateArray().Single(k => k.GetProperty("id").GetString() == id).Clone();
    }

    private XDocument Network() => XDocument.Parse(_desk.Run("undercowl network visit.jsonl --format xmlbif").Good().Out);

    private string[] Nodes() => [.. Network().Descendants("VARIABLE").Select(v => v.Element("NAME")!.Value)];

    private int Table(string quantity) =>
        Network().Descendants("VARIABLE").First(v => v.Element("NAME")!.Value.StartsWith($"{quantity}@cyl:2#", StringComparison.Ordinal)).Elements("OUTCOME").Count();

    /// <summary>This finding's likelihood as a general tool reads it: voltage by clip.</summary>
    private double[,] Likelihoods()
    {
        var id = Projected().Findings[^1].Id.ToString();
        var table = Network().Descendants("DEFINITION").First(d => d.Element("FOR")!.Value.EndsWith(id, StringComparison.Ordinal) && d.Elements("GIVEN").Count() == 2);
        Assert.StartsWith("lead-voltage@cyl:2#", table.Element("GIVEN")!.Value, StringComparison.Ordinal);
        double[] numbers = [.. table.Element("TABLE")!.Value.Split(' ').Select(n => double.Parse(n, CultureInfo.InvariantCulture))];
        var likelihoods = new double[Levels.Length, 2];
        for (var i = 0; i < likelihoods.Length; i++)
        {
            likelihoods[i / 2, i % 2] = numbers[2 * i + 1];
        }

        return likelihoods;
    }

    private static bool IsEvidence(string node) => node.StartsWith("finding ", StringComparison.Ordinal);

    private double Belief(string cause, string when) => Causes("visit.jsonl").Single(c => c.GetProperty("cause").GetString() == cause).GetProperty(when).GetDouble();

    /// <summary>The sum over all conditions of the coil's winding but the sound one.</summary>
    private double NotSoundNow() => Causes("visit.jsonl")
        .Where(c => c.GetProperty("cause").GetString()!.StartsWith(Coil[..(Coil.IndexOf('=', StringComparison.Ordinal) + 1)], StringComparison.Ordinal)).Sum(c => c.GetProperty("now").GetDouble());

    private JsonElement[] Causes(string job)
    {
        var belief = _desk.Run($"undercowl belief {job} --json").Json();
        Assert.Equal(0, belief.GetProperty("errorBound").GetDouble());
        return [.. belief.GetProperty("causes").EnumerateArray()];
    }

    /// <summary>The belief of the same job without its last line.</summary>
    private double CoilBefore()
    {
        var lines = File.ReadAllText(_desk.PathOf("visit.jsonl")).TrimEnd('\n').Split('\n');
        File.WriteAllText(_desk.PathOf("before.jsonl"), string.Concat(lines[..^1].Select(l => l + "\n")));
        return Causes("before.jsonl").Single(c => c.GetProperty("cause").GetString() == Coil).GetProperty("asFound").GetDouble();
    }
}
