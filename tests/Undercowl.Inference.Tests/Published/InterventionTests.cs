namespace Undercowl.Inference.Tests.Published;

/// <summary>Independent: recomputed in exact rationals from the published tables; printed figures are said to be so.</summary>
public sealed class InterventionTests
{
    [Fact]
    public void Seeing_is_not_doing_in_the_sprinkler()
    {
        var net = Networks.Sprinkler();
        net.Check("do:S=y", 1, "C=y .5 R=y .5 W=y .945");
        net.Check("S=y", null, "C=y .166666667 R=y .3 W=y .927");
        net.Check("do:S=n", 1, "W=y .45");
        net.Check("do:R=y", 1, "W=y .927 S=y .3");
        net.Check("do:W=y", 1, "C=y .5 S=y .3 R=y .5");
        net.Check("do:S=y W=y", null, "C=y .514285714 R=y .523809524");
    }

    [Fact]
    public void Mending_a_cause_and_looking_again_in_the_chest_clinic()
    {
        var net = Networks.Asia();
        net.Check("do:smoke=n", 1, "lung=y .01 bronc=y .3 either=y .020296 xray=y .06887528 dysp=y .3191332");
        net.Check("do:bronc=n", 1, "smoke=y .5 lung=y .055 dysp=y .1388968");
        net.Check("bronc=n", null, "smoke=y .363636364 lung=y .0427272727 dysp=y .131609745");
        net.Check("do:bronc=n dysp=y", .1388968, "lung=y .277184212 tub=y .0524130146 smoke=y .596183641");
        net.Check("bronc=n dysp=y", null, "lung=y .227255898 tub=y .0553150527 smoke=y .457595293");
        net.Check("do:lung=n xray=y", .059672, "tub=y .170800375");
    }

    /// <summary>Kidney stones: Charig et al. 1986, counts 81/87, 192/263, 234/270, 55/80; .78 and .826 are printed.</summary>
    [Fact]
    public void Simpsons_paradox()
    {
        double small = 87 + 270, large = 263 + 80;
        var net = new Printed().States("size", ["small", "large"], "", small / 700, large / 700)
            .States("treatment", ["A", "B"], "size", 87 / small, 270 / small, 263 / large, 80 / large)
            .Yes("cured", "size treatment", 81 / 87.0, 234 / 270.0, 192 / 263.0, 55 / 80.0);
        net.Check("treatment=A", null, "cured=y .78");
        net.Check("treatment=B", null, "cured=y .825714286");
        net.Check("do:treatment=A", null, "cured=y .832546217");
        net.Check("do:treatment=B", null, "cured=y .778875");
    }

    /// <summary>Pearl, Causality (2009): 40 + 40 patients; .5 against .4 seen, .4 against .5 done.</summary>
    [Fact]
    public void Forty_and_forty_patients()
    {
        var net = new Printed().States("sex", ["m", "f"], "", .5, .5).Yes("drug", "sex", .75, .25)
            .Yes("well", "sex drug", .7, .6, .3, .2);
        net.Check("drug=y", null, "well=y .5");
        net.Check("drug=n", null, "well=y .4");
        net.Check("do:drug=y", null, "well=y .4");
        net.Check("do:drug=n", null, "well=y .5");
    }

    /// <summary>The drug example of a causal-inference notebook: seen .5000 and .5750 are printed there.</summary>
    [Fact]
    public void Drug_and_sex()
    {
        var net = new Printed().States("sex", ["f", "m"], "", .5, .5).Yes("drug", "sex", .75, .25)
            .Yes("healed", "sex drug", .8, .7, .4, .2);
        net.Check("drug=n", null, "healed=y .5");
        net.Check("drug=y", null, "healed=y .575");
        net.Check("do:drug=n", null, "healed=y .6");
        net.Check("do:drug=y", null, "healed=y .45");
    }

    /// <summary>
    /// Pearl's front door; half the people smoke, and the hidden gene makes the observed table: it is smoking itself here,
    /// which gives the observed numbers. Derived by the front-door sum of do(smoke) over tar: .5475 and .5025 (as printed).
    /// </summary>
    [Fact]
    public void Front_door()
    {
        var seen = new Printed().Yes("smoke", "", .5).Yes("tar", "smoke", .05, .95).Yes("cancer", "smoke tar", .9, .95, .1, .15);
        seen.Check("smoke=y", null, "cancer=y .1475");
        seen.Check("smoke=n", null, "cancer=y .9025");
        // The gene (a copy of who smokes by nature) causes cancer; smoking acts through tar alone.
        var net = new Printed().Yes("gene", "", .5).Yes("smoke", "gene", 0, 1).Yes("tar", "smoke", .05, .95)
            .Yes("cancer", "gene tar", .9, .95, .1, .15);
        net.Check("smoke=y", null, "cancer=y .1475");
        net.Check("do:smoke=y", null, "cancer=y .5475");
        net.Check("do:smoke=n", null, "cancer=y .5025");
    }
}
