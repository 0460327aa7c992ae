namespace Undercowl.Inference.Tests.Published;

/// <summary>
/// Independent: figures recomputed by two other exact methods in exact rational arithmetic from the published tables
/// (each network's source stands at its tables), to nine digits; those that are also in print are said so.
/// </summary>
public sealed class PrintedNumbersTests
{
    [Fact]
    public void Chest_clinic()
    {
        var asia = Networks.Asia();
        asia.Check("", 1, "tub=y .0104 smoke=y .5 lung=y .055 bronc=y .45 either=y .064828 xray=y .11029004 dysp=y .4359706");
        asia.Check("dysp=y", .4359706, "tub=y .0188453075 smoke=y .63399688 lung=y .102759223 bronc=y .833967336 either=y .120535834 xray=y .162098326 asia=y .0103249508");
        // Also printed by the gRain package's documentation: lung .09952515, bronc .8114021, evidence .004501375.
        asia.Check("asia=y dysp=y", .004501375, "tub=y .087750965 smoke=y .625919858 lung=y .0995251451 bronc=y .811402072 either=y .182299853 xray=y .219538863");
        asia.Check("asia=y dysp=y smoke=y", .0028175, "tub=y .0727595386 lung=y .145519077 bronc=y .867258208 either=y .211002662 xray=y .246232476");
        asia.Check("asia=y dysp=y xray=n", .00351314825, "tub=y .00224869531 smoke=y .604511922 lung=y .00255041899 bronc=y .862760773 either=y .00467159335");
        asia.Check("xray=y", .11029004, "tub=y .0924108832 smoke=y .687753853 lung=y .488711401 bronc=y .506326156 either=y .576039686 dysp=y .640765969 asia=y .0131555397");
        asia.Check("smoke=y xray=y dysp=n", .020333232, "tub=y .045112356 lung=y .433772654 bronc=y .289531148 either=y .474373774 asia=y .0113356303");
        asia.Check("either=n", .935172, "tub=y 0 smoke=y .476190476 lung=y 0 bronc=y .442857143 xray=y .05 dysp=y .41 asia=y .00959983832");
    }

    [Fact]
    public void Chest_clinic_contradiction_is_reported_and_named()
    {
        var evidence = Networks.Asia().Given("smoke=y either=n lung=y");
        var posterior = Elimination.Run(evidence);
        Assert.False(posterior.Possible);
        Assert.Equal(double.NegativeInfinity, posterior.LogEvidence);
        var conflict = Conflict.Of(evidence);
        Assert.Equal(double.PositiveInfinity, conflict.Measure);
        Assert.Equal(["either", "lung"], conflict.Irreducible);
    }

    [Fact]
    public void Chest_clinic_most_probable_states()
    {
        var asia = Networks.Asia();
        asia.CheckMostProbable("", "asia=n tub=n smoke=n lung=n bronc=n either=n xray=n dysp=n", .29036197575);
        asia.CheckMostProbable("dysp=y", "asia=n tub=n smoke=y lung=n bronc=y either=n xray=n", .461307529);
        asia.CheckMostProbable("asia=y dysp=y", "tub=n smoke=y lung=n bronc=y either=n xray=n", .433067674);
        asia.CheckMostProbable("xray=y", "asia=n tub=n smoke=y lung=y bronc=y either=y dysp=y", .235138604);
        asia.CheckMostProbable("smoke=y xray=y dysp=n", "asia=n tub=n lung=n bronc=n either=n", .390435224);
    }

    [Fact]
    public void Sprinkler_of_four_nodes()
    {
        var net = Networks.Sprinkler();
        net.Check("", 1, "C=y .5 S=y .3 R=y .5 W=y .6471");
        // Murphy prints .6471, .430, .708 and .1945 (from memory).
        net.Check("W=y", .6471, "C=y .575799722 S=y .429763561 R=y .707927677");
        net.Check("W=y R=y", .4581, "C=y .793713163 S=y .194499018");
        net.Check("W=y S=y", .2781, "C=y .174757282 R=y .32038835");
        net.Check("W=y C=n", .2745, "S=y .836065574 R=y .344262295");
        net.Check("W=n", .3529, "C=y .361008784 S=y .06205724 R=y .118730519");
        net.CheckMostProbable("", "C=y S=n R=y W=y", .324);
        net.CheckMostProbable("W=y", "C=y S=n R=y", .50069541);
        net.CheckMostProbable("W=y R=y", "C=y S=n", .707269155);
        net.CheckMostProbable("W=y S=y", "C=n R=n", .647249191);
        net.CheckMostProbable("W=n", "C=n S=n R=n", .566732785);
    }

    [Fact]
    public void Sprinkler_of_three_nodes()
    {
        var net = Networks.SprinklerOfThree();
        net.Check("G=y", .44838, "R=y .357687676 S=y .646728222");
        net.Check("G=y S=y", null, "R=y .00682805711");
        net.Check("G=n", null, "R=y .0718248069");
    }

    [Fact]
    public void Burglary()
    {
        var net = Networks.Burglary();
        net.Check("", 1, "B=y .001 E=y .002 A=y .002516442 J=y .0521389757 M=y .011736345");
        net.Check("J=y", .0521389757, "B=y .0162837299 E=y .0113949688 A=y .0434377118");
        // Russell and Norvig print .284; public suites of that book's code have .2841718353643929.
        net.Check("J=y M=y", .00208410024, "B=y .2841718353643929 E=y .176066838 A=y .760692039", 5e-10);
        net.Check("J=y M=y E=y", .00036694094, "B=y .0032622416 A=y .998066882");
        net.Check("A=y", .002516442, "B=y .373551228 E=y .231008702");
        net.Check("A=y E=y", .00058132, "B=y .00326842359");
        net.Check("A=y E=n", .001935122, "B=y .484785972");
        net.Check("J=y M=n", .0500548755, "B=y .00512985813 E=y .00453864 A=y .0135738893");
        net.Check("J=n M=n", .93820878, "B=y 9.01843938e-5 E=y .00144073278 A=y 8.04653097e-5");
        net.CheckMostProbable("J=y M=y", "B=n E=n A=y", .301382461);
        net.CheckMostProbable("J=y M=y E=y", "B=n A=y", .994804777);
        net.CheckMostProbable("A=y", "B=n E=n J=y M=y", .249602916);
    }

    [Fact]
    public void Burglary_with_the_repository_priors()
    {
        var net = Networks.Burglary(.01, .02);
        net.Check("J=y M=y", .0106438889, "B=y .556522062 E=y .351769361 A=y .953781658");
        net.Check("A=y", null, "B=y .58346055");
        net.Check("A=y E=y", null, "B=y .0320296696");
        net.CheckMostProbable("J=y M=y", "B=y E=n A=y", .545248081);
    }

    [Fact]
    public void Cancer()
    {
        var net = Networks.Cancer();
        net.Check("", 1, "C=y .01163 X=y .208141 D=y .3040705");
        net.Check("D=y", null, "C=y .0248610109 S=y .30703406 P=low .898000628 X=y .217402708");
        net.Check("S=y", null, "C=y .032 X=y .2224 D=y .3112");
        net.Check("C=y", null, "S=y .825451419 P=low .750644884");
        net.Check("C=y S=y", null, "P=low .84375");
        net.Check("D=y S=y", null, "C=y .0668380463 X=y .246786632 P=low .897975578");
        net.Check("X=y D=y", .06610575, "C=y .102919186 S=y .348532465");
        net.Check("X=y D=y P=high", null, "C=y .22552343");
    }

    [Fact]
    public void Student()
    {
        var net = Networks.Student();
        net.Check("", 1, "G=g1 .362 G=g2 .2884 G=g3 .3496 S=s0 .725 L=l1 .502336");
        net.Check("I=i0", null, "L=l1 .3886");
        net.Check("I=i0 D=d0", null, "L=l1 .513");
        net.Check("G=g3", null, "I=i1 .0789473684 D=d1 .629290618");
        net.Check("L=l0", null, "I=i1 .140022184");
        // Given the grade the letter says nothing more.
        net.Check("G=g3 L=l0", null, "I=i1 .0789473684");
        net.Check("G=g3 S=s1", null, "I=i1 .578313253 D=d1 .759559979");
        net.Check("G=g3 D=d1", null, "I=i1 .109090909");
        net.Check("G=g2", null, "I=i1 .174757282");
        net.Check("G=g2 D=d1", null, "I=i1 .339622642");
        net.Check("L=l0 S=s1", .0771462, "I=i1 .722617575 G=g1 .239285927 G=g2 .270758637 G=g3 .489955435");
        net.CheckMostProbable("", "D=d1 I=i0 G=g3 S=s0 L=l0", .184338);
        // Derived: .3 x .6 x .08 x .8 x .4, and every node observed.
        net.Check("I=i1 D=d0 G=g2 S=s1 L=l0", .004608, "");
    }

    [Fact]
    public void Metastatic_cancer()
    {
        var net = Networks.Metastatic();
        net.Check("", 1, "B=y .32 C=y .08 D=y .32 E=y .616");
        net.Check("D=n E=y", .4112, "A=y .0972762646 B=y .0972762646 C=y .0311284047");
        net.Check("D=y", null, "A=y .425 B=y .8 C=y .2 E=y .64");
        net.Check("D=y E=n", null, "A=y .416666667 B=y .833333333 C=y .111111111");
        net.Check("D=y E=y", null, "A=y .4296875 B=y .78125 C=y .25");
    }

    [Fact]
    public void Fire_alarm()
    {
        var net = Networks.FireAlarm();
        net.Check("", 1, "report=y .0281261583 smoke=y .0189 alarm=y .02672902");
        net.Check("report=y", null, "tamper=y .399168904 fire=y .230504601 smoke=y .215149095");
        net.Check("smoke=y", null, "fire=y .476190476 tamper=y .02 report=y .32017553");
        net.Check("report=y smoke=y", null, "tamper=y .0284357146 fire=y .964234319");
        net.Check("report=y smoke=n", .0220748408, "tamper=y .500797009 fire=y .0293692216");
        net.Check("alarm=y smoke=n", null, "tamper=y .93988878 fire=y .0552600504");
    }

    [Fact]
    public void Wet_grass_has_answers_of_exactly_zero_and_one()
    {
        var net = Networks.WetGrass();
        net.Check("H=y", .272, "R=y .735294118 S=y .338235294 W=y .788235294");
        net.Check("H=y W=y", null, "R=y .932835821 S=y .160447761");
        var posterior = Elimination.Run(net.Given("H=y W=n"));
        Assert.Equal(0, posterior.Marginal(net["R"])[1]);
        Assert.Equal(1, posterior.Marginal(net["S"])[1]);
    }

    [Fact]
    public void Start_problem()
    {
        var net = Networks.StartProblem();
        net.Check("", 1, "start=y .931784");
        net.Check("start=n", .068216, "fuel=n .293186349 clean=n .580626246");
        net.Check("start=n meter=half", null, "fuel=n .00069085583 clean=n .804349628");
        net.Check("start=n meter=empty", null, "fuel=n .976413451 clean=n .0580408328");
        net.Check("start=n meter=full", null, "clean=n .804065397");
    }

    /// <summary>Russell and Norvig's fever: cold, flu and malaria inhibited with .6, .2 and .1, no leak; P(no fever) as printed.</summary>
    [Fact]
    public void Noisy_or_of_the_fever()
    {
        var net = new Printed().Yes("cold", "", .5).Yes("flu", "", .5).Yes("malaria", "", .5)
            .Yes("byCold", "cold", 0, .4).Yes("byFlu", "flu", 0, .8).Yes("byMalaria", "malaria", 0, .9)
            .Yes("fever", "byCold byFlu byMalaria", 0, 1, 1, 1, 1, 1, 1, 1);
        double[] printed = [1, .1, .2, .02, .6, .06, .12, .012];
        for (var i = 0; i < 8; i++)
        {
            string[] yes = ["n", "y"];
            net.Check($"do:cold={yes[i >> 2]} do:flu={yes[(i >> 1) & 1]} do:malaria={yes[i & 1]} fever=n", printed[i], "", 1e-15);
        }
    }
}
