namespace Undercowl.Inference.Tests.Published;

/// <summary>Tables of small published networks, each with its source.</summary>
internal static class Networks
{
    /// <summary>Lauritzen and Spiegelhalter, Local computations with probabilities…, JRSS B 50 (1988), the chest clinic.</summary>
    public static Printed Asia() => new Printed()
        .Yes("asia", "", .01).Yes("tub", "asia", .01, .05)
        .Yes("smoke", "", .5).Yes("lung", "smoke", .01, .1).Yes("bronc", "smoke", .3, .6)
        .Yes("either", "lung tub", 0, 1, 1, 1)
        .Yes("xray", "either", .05, .98)
        .Yes("dysp", "bronc either", .1, .7, .8, .9);

    /// <summary>The sprinkler of Murphy's tutorial and of Russell and Norvig (cloudy, sprinkler, rain, wet grass).</summary>
    public static Printed Sprinkler() => new Printed()
        .Yes("C", "", .5).Yes("S", "C", .5, .1).Yes("R", "C", .2, .8).Yes("W", "S R", 0, .9, .9, .99);

    /// <summary>The other sprinkler in circulation (rain, sprinkler, grass), from encyclopaedias; not the same numbers.</summary>
    public static Printed SprinklerOfThree() => new Printed()
        .Yes("R", "", .2).Yes("S", "R", .4, .01).Yes("G", "S R", 0, .8, .9, .99);

    /// <summary>Pearl's burglary; tables of Russell and Norvig. A repository copy has .01 and .02 as priors instead.</summary>
    public static Printed Burglary(double burglary = .001, double earthquake = .002) => new Printed()
        .Yes("B", "", burglary).Yes("E", "", earthquake).Yes("A", "B E", .001, .29, .94, .95)
        .Yes("J", "A", .05, .9).Yes("M", "A", .01, .7);

    /// <summary>Korb and Nicholson, Bayesian Artificial Intelligence: cancer.</summary>
    public static Printed Cancer() => new Printed()
        .States("P", ["low", "high"], "", .9, .1).Yes("S", "", .3)
        .Yes("C", "P S", .001, .03, .02, .05).Yes("X", "C", .2, .9).Yes("D", "C", .3, .65);

    /// <summary>Koller and Friedman, Probabilistic Graphical Models, chapter 3: student.</summary>
    public static Printed Student() => new Printed()
        .States("D", ["d0", "d1"], "", .6, .4).States("I", ["i0", "i1"], "", .7, .3)
        .States("G", ["g1", "g2", "g3"], "I D", .3, .4, .3, .05, .25, .7, .9, .08, .02, .5, .3, .2)
        .States("S", ["s0", "s1"], "I", .95, .05, .2, .8)
        .States("L", ["l0", "l1"], "G", .1, .9, .4, .6, .99, .01);

    /// <summary>Metastatic cancer: Cooper; Pearl, Probabilistic Reasoning in Intelligent Systems (1988).</summary>
    public static Printed Metastatic() => new Printed()
        .Yes("A", "", .2).Yes("B", "A", .2, .8).Yes("C", "A", .05, .2).Yes("D", "B C", .05, .8, .8, .8).Yes("E", "C", .6, .8);

    /// <summary>Poole and Mackworth, Artificial Intelligence: fire alarm.</summary>
    public static Printed FireAlarm() => new Printed()
        .Yes("tamper", "", .02).Yes("fire", "", .01).Yes("alarm", "fire tamper", .0001, .85, .99, .5)
        .Yes("smoke", "fire", .01, .9).Yes("leaving", "alarm", .001, .88).Yes("report", "leaving", .01, .75);

    /// <summary>Jensen: wet grass (Watson's and Holmes's lawns).</summary>
    public static Printed WetGrass() => new Printed()
        .Yes("R", "", .2).Yes("S", "", .1).Yes("W", "R", .2, 1).Yes("H", "R S", 0, .9, 1, 1);

    /// <summary>Jensen, Bayesian Networks and Decision Graphs (2001): the start problem. Tables from memory.</summary>
    public static Printed StartProblem() => new Printed()
        .Yes("fuel", "", .98).Yes("clean", "", .96)
        .States("meter", ["full", "half", "empty"], "fuel", .001, .001, .998, .39, .60, .01)
        .Yes("start", "fuel clean", 0, 0, .01, .99);
}
