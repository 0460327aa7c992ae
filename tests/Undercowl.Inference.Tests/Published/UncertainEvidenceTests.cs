namespace Undercowl.Inference.Tests.Published;

/// <summary>Independent: recomputed in exact rationals; where a paper prints the figure it is named.</summary>
public sealed class UncertainEvidenceTests
{
    /// <summary>Pearl 1988; Chan and Darwiche, On the revision of probabilistic beliefs using uncertain evidence (2005): 3.74e-4, .00941.</summary>
    [Fact]
    public void Holmes_hears_of_the_alarm()
    {
        var net = new Printed().Yes("burglary", "", 1e-4).Yes("alarm", "burglary", .01, .95);
        net.Check("alarm=y", null, "burglary=y .0094115316");
        var heard = new Evidence(net.Network);
        heard.Likelihood(net["alarm"], [1, 4]);
        net.Check(Elimination.Run(heard), "4:1", "burglary=y .000373684098 alarm=y .0391892705");
        Near.Equal(.000373684098, Elimination.Run(heard).Marginal(net["burglary"])[1], 6e-13, "nine digits of a small number");
        // A target of .8 is the likelihood 392.275015 : 1 here; the engine takes the likelihood, never the target.
        var target = new Evidence(net.Network);
        target.Likelihood(net["alarm"], [1, 392.275015]);
        net.Check(Elimination.Run(target), "392:1", "burglary=y .00753023548 alarm=y .8");
    }

    /// <summary>Jeffrey's cloth by candle-light, with the likelihoods that lead to .7, .25, .05; P(sold) = .42 as printed.</summary>
    [Fact]
    public void Cloth_by_candle_light()
    {
        var net = new Printed().States("colour", ["green", "blue", "violet"], "", .3, .3, .4).Yes("sold", "colour", .4, .4, .8);
        net.Check("", 1, "sold=y .56");
        var evidence = new Evidence(net.Network);
        evidence.Likelihood(net["colour"], [.7 / .3, .25 / .3, .05 / .4]);
        net.Check(Elimination.Run(evidence), "candle", "colour=green .7 colour=blue .25 colour=violet .05 sold=y .42", 1e-14);
    }

    [Fact]
    public void Virtual_evidence_in_the_chest_clinic_commutes()
    {
        var net = Networks.Asia();
        var xray = new Evidence(net.Network);
        xray.Likelihood(net["xray"], [1, 8]);
        net.Check(Elimination.Run(xray), "xray 8:1", "lung=y .243957457 tub=y .0461301372 bronc=y .474539929 dysp=y .525194937 xray=y .497914923");
        Near.Equal(1.77203028, Math.Exp(Elimination.Run(xray).LogEvidence), Near.NineDigits, "normaliser");
        var reversed = new Evidence(net.Network);
        reversed.Likelihood(net["dysp"], [4, 1]);
        reversed.Likelihood(net["xray"], [1, 8]);
        xray.Likelihood(net["dysp"], [4, 1]);
        foreach (var evidence in new[] { xray, reversed })
            net.Check(Elimination.Run(evidence), "both", "lung=y .156609526 tub=y .0310145407 bronc=y .293495901 xray=y .426708627 dysp=y .216627473");
        var mixed = net.Given("asia=y");
        mixed.Likelihood(net["xray"], [1, 8]);
        net.Check(Elimination.Run(mixed), "asia, xray 8:1", "lung=y .214472024 tub=y .194974568");
    }

    /// <summary>
    /// Weights of evidence in decibans for the chest clinic, findings added in the order asia, smoke, dysp, xray: an abnormal
    /// film alone speaks for bronchitis (+.98), in context against it (-4.45). Independent, recomputed in exact rationals.
    /// </summary>
    [Theory]
    [InlineData("lung", -12.350691, new[] { 0, 2.808266, 1.854601, 9.074690 }, new[] { 0, 2.808266, 2.939809, 12.154555 }, new[] { -2.795216, 2.359025, .862303, 9.074690 })]
    [InlineData("bronc", -.871502, new[] { 0, 2.632414, 6.390495, -4.452604 }, new[] { 0, 2.632414, 7.881057, .981404 }, new[] { -.268257, 1.409352, 1.937890, -4.452604 })]
    [InlineData("tub", -19.784263, new[] { 6.996727, 0, 1.734512, 7.155588 }, new[] { 6.996727, 0, 2.618921, 9.862602 }, new[] { 6.996727, -1.986008, .531199, 7.155588 })]
    public void Weights_of_evidence_stepwise_alone_and_left_out(string cause, double prior, double[] stepwise, double[] alone, double[] leftOut)
    {
        var net = Networks.Asia();
        string[] findings = ["asia=y", "smoke=y", "dysp=y", "xray=y"];
        var all = Weights([0, 1, 2, 3]);
        Near.Equal(prior, all.Prior, 1e-6, "prior");
        Near.Equal(all.Posterior, all.Prior + all.Stepwise.Sum(), 1e-9, "stepwise weights add up");
        for (var i = 0; i < findings.Length; i++)
        {
            Near.Equal(stepwise[i], all.Stepwise[i], 1e-6, $"{findings[i]} stepwise");
            Near.Equal(leftOut[i], all.LeaveOneOut[i], 1e-6, $"{findings[i]} left out");
            Near.Equal(alone[i], Weights([i]).Stepwise[0], 1e-6, $"{findings[i]} alone");
        }

        WeightsOfEvidence Weights(int[] of) => WeightsOfEvidence.Of(
            of.Length, kept => net.Given(string.Join(' ', of.Where((_, i) => kept(i)).Select(i => findings[i]))), net[cause], 1, EliminationOptions.Default);
    }

    /// <summary>
    /// Three hypotheses of a batch of widgets: a third, a sixth or 99 in 100 are bad; m bad in a row. Decibans of the first: it rises to 9.98 at seven and
    /// falls when the third overtakes. E. T. Jaynes, Probability Theory, chapter 4; the figures recomputed in exact rationals.
    /// </summary>
    [Theory]
    [InlineData(0, -10.0, 10.0, -60.0)]
    [InlineData(1, -6.9897, 6.9896, -52.6400)]
    [InlineData(5, 5.0163, -5.0625, -27.1292)]
    [InlineData(7, 9.9763, -11.1684, -16.8198)]
    [InlineData(10, 2.2388, -22.1100, -2.3526)]
    [InlineData(11, -2.4293, -27.4982, 2.3960)]
    [InlineData(20, -44.9652, -95.1714, 44.9652)]
    public void A_third_hypothesis_overtakes_the_one_that_the_evidence_had_raised(int bad, double first, double second, double third)
    {
        var builder = new NetworkBuilder();
        var rest = 1 - 1e-6;
        builder.Add("batch", 3, [], [rest / 11, rest * 10 / 11, 1e-6]);
        var network = builder.Build();
        double[] expected = [first, second, third];
        for (var state = 0; state < 3; state++)
        {
            var weights = WeightsOfEvidence.Of(bad, Seen, 0, state, EliminationOptions.Default);
            Near.Equal(expected[state], weights.Posterior, 1e-4, $"hypothesis {state}");
        }

        Evidence Seen(Func<int, bool> kept)
        {
            var evidence = new Evidence(network);
            for (var i = 0; i < bad; i++)
            {
                if (kept(i))
                {
                    evidence.Likelihood(0, [1 / 3.0, 1 / 6.0, 0.99]);
                }
            }

            return evidence;
        }
    }

    /// <summary>Derived: even odds, a piece of nine to one (9.54 dB) and one that excludes the state; the odds end at the bound that is told, and say so.</summary>
    [Fact]
    public void What_excludes_a_state_weighs_more_than_is_told_and_not_without_end()
    {
        var builder = new NetworkBuilder();
        builder.Add("lamp", 2, [], [0.5, 0.5]);
        var network = builder.Build();
        double[][] pieces = [[0.9, 0.1], [0, 1], [0.5, 0.25]];
        foreach (var (state, sign) in ((int, int)[])[(0, 1), (1, -1)])
        {
            var weights = WeightsOfEvidence.Of(3, Seen, 0, state, EliminationOptions.Default);
            Assert.Equal(-sign * WeightsOfEvidence.Most, weights.Posterior);
            Near.Equal(sign * 9.5424, weights.Stepwise[0], 1e-4, "the first piece");
            Near.Equal(weights.Posterior - weights.Prior, weights.Stepwise.Sum(), 1e-9, "stepwise weights add up");
            Assert.Equal([false, true, true], weights.StepwiseAtLeast);
            Assert.Equal([true, true, true], weights.LeaveOneOutAtLeast);
        }

        Evidence Seen(Func<int, bool> kept)
        {
            var evidence = new Evidence(network);
            for (var i = 0; i < pieces.Length; i++)
            {
                if (kept(i))
                {
                    evidence.Likelihood(0, pieces[i]);
                }
            }

            return evidence;
        }
    }
}
