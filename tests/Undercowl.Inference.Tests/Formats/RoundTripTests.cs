using System.Globalization;
using System.Xml.Linq;
using Undercowl.Inference.Formats;
using Undercowl.Inference.Tests.Published;

namespace Undercowl.Inference.Tests.Formats;

/// <summary>
/// What is written is read back by a small reader that knows only the format (UAI: as its evaluations describe it; XMLBIF:
/// version 0.3), and the network read gives the same posteriors by the full joint.
/// </summary>
public sealed class RoundTripTests
{
    [Fact]
    public void Uai_texts_reproduce_evidence_and_posteriors()
    {
        for (var seed = 70_000; seed < 70_400; seed++)
        {
            var c = RandomCases.Make(seed, 7, 300);
            var text = Uai.Write(c.Evidence);
            SameAnswers(c, ReadUai(text), text.LogScale, $"seed {seed}");
        }
    }

    [Fact]
    public void Xmlbif_texts_reproduce_evidence_and_posteriors()
    {
        for (var seed = 71_000; seed < 71_400; seed++)
        {
            var c = RandomCases.Make(seed, 7, 300);
            SameAnswers(c, ReadXmlBif(XmlBif.Write(c.Evidence, "a & b <c>")), null, $"seed {seed}");
        }
    }

    /// <summary>Independent: log10 P(e) of the chest clinic as a UAI result would give it, from exact rationals.</summary>
    [Theory]
    [InlineData("asia=y dysp=y", -2.3466548054)]
    [InlineData("dysp=y", -.3605427967)]
    public void The_chest_clinic_as_uai_has_its_known_total(string findings, double log10)
    {
        var text = Uai.Write(Networks.Asia().Given(findings));
        Assert.StartsWith("BAYES\n8\n2 2 2 2 2 2 2 2\n8\n1 0\n2 0 1\n", text.Network, StringComparison.Ordinal);
        Near.Equal(log10, Math.Log10(new FullJoint(ReadUai(text)).Total), 1e-10);
    }

    private static void SameAnswers(Case c, Case read, double? logScale, string what)
    {
        // Likelihoods became nodes, so the read network may be larger than the twin of the original.
        var before = new FullJoint(c);
        var after = new FullJoint(read);
        Assert.Equal(before.Total > 0, after.Total > 0);
        if (before.Total == 0)
            return;
        if (logScale is { } scale)
            Near.Equal(Math.Log(before.Total), Math.Log(after.Total) + scale, Near.Exact, what);
        for (var v = 0; v < c.Network.Count; v++)
            Near.Equal(before.Joint(v), after.Joint(v), Near.Exact, $"{what} node {v}");
    }

    private static Case ReadUai(UaiText text)
    {
        var words = new Queue<string>(text.Network.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        int Next() => int.Parse(words.Dequeue(), CultureInfo.InvariantCulture);
        Assert.Equal("BAYES", words.Dequeue());
        var states = Enumerable.Range(0, Next()).ToArray();
        for (var v = 0; v < states.Length; v++)
            states[v] = Next();
        var scopes = new int[Next()][];
        for (var f = 0; f < scopes.Length; f++)
        {
            scopes[f] = new int[Next()];
            for (var i = 0; i < scopes[f].Length; i++)
                scopes[f][i] = Next();
        }

        var builder = new NetworkBuilder();
        foreach (var scope in scopes)
        {
            Assert.Equal(builder.Count, scope[^1]);
            var table = new double[Next()];
            for (var i = 0; i < table.Length; i++)
                table[i] = double.Parse(words.Dequeue(), CultureInfo.InvariantCulture);
            builder.Add($"{scope[^1]}", states[scope[^1]], scope.AsSpan(0, scope.Length - 1), table);
        }

        Assert.Empty(words);
        var read = new Case(builder.Build());
        var evidence = text.Evidence.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Select(w => int.Parse(w, CultureInfo.InvariantCulture)).ToArray();
        Assert.Equal(1 + 2 * evidence[0], evidence.Length);
        for (var i = 1; i < evidence.Length; i += 2)
            read.Observe(evidence[i], evidence[i + 1]);
        return read;
    }

    private static Case ReadXmlBif(string text)
    {
        var network = XDocument.Parse(text).Root!.Element("NETWORK")!;
        Assert.Equal("a & b <c>", network.Element("NAME")!.Value);
        var variables = network.Elements("VARIABLE").ToDictionary(v => v.Element("NAME")!.Value);
        var builder = new NetworkBuilder();
        var numbers = new Dictionary<string, int>();
        foreach (var definition in network.Elements("DEFINITION"))
        {
            var name = definition.Element("FOR")!.Value;
            string[] outcomes = [.. variables[name].Elements("OUTCOME").Select(o => o.Value)];
            int[] parents = [.. definition.Elements("GIVEN").Select(g => numbers[g.Value])];
            double[] table = [.. definition.Element("TABLE")!.Value.Split(' ').Select(w => double.Parse(w, CultureInfo.InvariantCulture))];
            numbers[name] = builder.Add(name, outcomes, parents, table);
        }

        var read = new Case(builder.Build());
        foreach (var (name, node) in numbers)
        {
            if (variables[name].Element("PROPERTY")?.Value is not { } property)
                continue;
            var observed = property["observed = ".Length..];
            read.Observe(node, Enumerable.Range(0, read.Network.States(node)).First(s => read.Network.StateName(node, s) == observed));
        }

        return read;
    }
}
