using System.IO.Enumeration;
using System.Text;
using Undercowl.Diagnosis.Beliefs;
using Undercowl.Inference;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Fixtures;

/// <summary>
/// How far a set of causes stands above every other, as found, in decibans of odds. The set is believed when at least one of
/// its causes holds; a cause that only follows from others (a plug's deposit) is no rival.
/// </summary>
internal sealed class Verdict
{
    /// <summary>
    /// Conditions rarer than this over all their parts are not tried: thrice as much of one is less than 0.03, and no other
    /// cause loses more than 0.02 of itself by it, so a set that leads with more than half the weight goes on leading.
    /// </summary>
    private const double WorthTrying = 0.01;

    /// <param name="diagnosis">The job.</param>
    /// <param name="named">Cause ids; <c>*</c> stands for any text.</param>
    public Verdict(JobDiagnosis diagnosis, string[] named)
    {
        var network = diagnosis.Belief.Network;
        var evidence = network.Evidence();
        var whole = Elimination.Run(evidence, network.Options with { Wanted = network.Wanted() });
        var others = new List<(string Cause, double Probability)>();
        var shares = new Dictionary<(string Part, string Aspect, string Condition), double>();
        var met = new HashSet<string>();
        foreach (var aspect in network.Model.Aspects)
        {
            var node = network.Conditions.First(aspect);
            var asFound = whole.Marginal(node);
            var without = new double[aspect.StateNames.Length];
            without[0] = 1;
            for (var s = 1; s < aspect.StateNames.Length; s++)
            {
                var cause = aspect.CauseId(s);
                var by = named.FirstOrDefault(n => FileSystemName.MatchesSimpleExpression(n, cause, ignoreCase: false));
                without[s] = by is null ? 1 : 0;
                met.Add(by ?? "");
                if (by is null && !aspect.Aspect.Consequence)
                {
                    others.Add((cause, asFound[s]));
                }

                var of = (aspect.Part.Kind.Id, aspect.Aspect.Id, aspect.StateNames[s]);
                shares[of] = shares.GetValueOrDefault(of) + asFound[s];
            }

            if (without.Contains(0))
            {
                evidence.Likelihood(node, without, "none of the named");
            }
        }

        Assert.All(named, n => Assert.True(met.Contains(n), $"nothing in this layout is called {n}"));
        var none = Elimination.Run(evidence, network.Options with { Wanted = network.Wanted() });
        Named = none.Possible ? 10 * Math.Log10(Math.Exp(whole.LogEvidence - none.LogEvidence) - 1) : double.PositiveInfinity;
        Others = [.. others.OrderByDescending(o => o.Probability)];
        Common = [.. shares.Where(s => s.Value >= WorthTrying).Select(s => s.Key).Order()];
    }

    /// <summary>Odds of the set, dB.</summary>
    public double Named { get; }

    public (string Cause, double Probability)[] Others { get; }

    /// <summary>By how much the set leads, dB.</summary>
    public double Lead => Named - Decibans.Of(Others[0].Probability);

    private (string Part, string Aspect, string Condition)[] Common { get; }

    /// <summary>
    /// The set leads every other cause by 10 dB, and still leads whichever prior is three times or a third of what it is.
    /// </summary>
    /// <param name="story">So far.</param>
    /// <param name="named">Cause ids; <c>*</c> stands for any text.</param>
    public static void Is(Story story, params string[] named)
    {
        var verdict = new Verdict(story.Diagnosis, named);
        Assert.True(verdict.Lead >= 10, verdict.Telling(story, "leads by less than 10 dB"));
        Assert.True(verdict.Named > 0, verdict.Telling(story, "is less likely than not"));
        foreach (var (part, aspect, condition) in verdict.Common)
        {
            foreach (var times in (double[])[3, 1.0 / 3])
            {
                var changed = new Verdict(Shop.WithPrior(part, aspect, condition, times).Open(story.Job), named);
                Assert.True(changed.Lead > 0, changed.Telling(story, $"no longer leads when {part}.{aspect}={condition} is taken {times:0.##} times"));
            }
        }
    }

    private string Telling(Story story, string fault)
    {
        var text = new StringBuilder($"The named set {fault}: {Named:0.0} dB, {Lead:0.0} dB above {Others[0].Cause}.").AppendLine();
        foreach (var (cause, probability) in Others.Take(6))
        {
            text.AppendLine($"  other {probability:0.0000} {cause}");
        }

        foreach (var cause in story.Causes.OrderByDescending(c => c.AsFound).Take(12))
        {
            text.AppendLine($"  {cause.AsFound:0.0000} now {cause.Now:0.0000} {cause.Cause}");
        }

        return text.ToString();
    }
}
