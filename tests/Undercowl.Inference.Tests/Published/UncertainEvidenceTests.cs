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
    [InlineData("lung", -12.350691, 0, 2.808266, 1.854601, 9.074690)]
    [InlineData("bronc", -.871502, 0, 2.632414, 6.390495, -4.452604)]
    [InlineData("tub", -19.784263, 6.996727, 0, 1.734512, 7.155588)]
    public void Stepwise_weights_of_evidence(string cause, double prior, double asia, double smoke, double dysp, double xray)
    {
        double[] steps = [asia, smoke, dysp, xray];
        var net = Networks.Asia();
        string[] findings = ["asia=y", "smoke=y", "dysp=y", "xray=y"];
        var before = Decibans(net, "", cause);
        Near.Equal(prior, before, 1e-6, "prior");
        for (var i = 0; i < findings.Length; i++)
        {
            var after = Decibans(net, string.Join(' ', findings[..(i + 1)]), cause);
            Near.Equal(steps[i], after - before, 1e-6, findings[i]);
            before = after;
        }

        if (cause == "bronc")
            Near.Equal(.981404, Decibans(net, "xray=y", cause) - prior, 1e-6, "film alone");
    }

    private static double Decibans(Printed net, string findings, string cause)
    {
        var marginal = Elimination.Run(net.Given(findings)).Marginal(net[cause]);
        return 10 * Math.Log10(marginal[1] / marginal[0]);
    }
}
