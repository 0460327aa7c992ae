using System.Globalization;

namespace Undercowl.Inference.Tests.Published;

/// <summary>
/// A published network, written as its paper writes it, with checks against printed numbers. A two-state node's states are
/// "n" and "y"; a table row is P(y) per parent configuration, no-before-yes, last parent fastest, unless states are named.
/// </summary>
internal sealed class Printed
{
    private readonly NetworkBuilder _builder = new();
    private readonly Dictionary<string, int> _nodes = [];
    private Network? _network;

    public Network Network => _network ??= _builder.Build();

    public int this[string name] => _nodes[name];

    /// <summary>A two-state node by P(y) for each parent configuration.</summary>
    public Printed Yes(string name, string parents, params double[] yes) =>
        States(name, ["n", "y"], parents, [.. yes.SelectMany(p => new[] { 1 - p, p })]);

    public Printed States(string name, string[] states, string parents, params double[] table)
    {
        var numbers = parents.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(p => _nodes[p]).ToArray();
        _nodes[name] = _builder.Add(name, states, numbers, table);
        return this;
    }

    /// <summary>Evidence as "a=y b=n", interventions as "do:a=y".</summary>
    public Evidence Given(string findings)
    {
        var evidence = new Evidence(Network);
        foreach (var finding in findings.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var (node, state) = Parse(finding.Replace("do:", "", StringComparison.Ordinal));
            if (finding.StartsWith("do:", StringComparison.Ordinal))
                evidence.Intervene(node, state);
            else
                evidence.Observe(node, state);
        }

        return evidence;
    }

    /// <summary>Checks P(evidence) and posteriors written as "tub=y .0188 smoke=y .63".</summary>
    public void Check(string findings, double? evidence, string expected, double tolerance = Near.NineDigits)
    {
        var posterior = Elimination.Run(Given(findings));
        if (evidence is { } pe)
            Near.Equal(pe, Math.Exp(posterior.LogEvidence), tolerance, $"P({findings})");
        Check(posterior, findings, expected, tolerance);
    }

    public void Check(Posterior posterior, string findings, string expected, double tolerance = Near.NineDigits)
    {
        var words = expected.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        for (var i = 0; i < words.Length; i += 2)
        {
            var (node, state) = Parse(words[i]);
            Near.Equal(double.Parse(words[i + 1], CultureInfo.InvariantCulture), posterior.Marginal(node)[state], tolerance, $"P({words[i]} | {findings})");
        }
    }

    /// <summary>Checks the most probable joint state of everything not observed.</summary>
    public void CheckMostProbable(string findings, string expected, double conditional, double tolerance = Near.NineDigits)
    {
        var evidence = Given(findings);
        var pairs = expected.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Parse).ToArray();
        var best = MostProbable.Explanations(evidence, [.. pairs.Select(p => p.Node)], 1)[0];
        Assert.Equal(pairs.Select(p => p.State), best.States);
        Near.Equal(conditional, best.Probability, tolerance, $"MPE given {findings}");
    }

    private (int Node, int State) Parse(string word)
    {
        var parts = word.Split('=');
        var node = _nodes[parts[0]];
        for (var s = 0; s < Network.States(node); s++)
        {
            if (Network.StateName(node, s) == parts[1])
                return (node, s);
        }

        throw new ArgumentException(word);
    }
}
