namespace Undercowl.Physics.Tests;

public sealed class ReadmeExampleTests
{
    [Fact]
    [Truth(From.Derived, "needle table 8 mm: 9.42 kV, times 1.2 for blunt points, times 0.994 x 1.0168 of density: 11.4 kV")]
    public void The_example_runs_and_says_a_little_more_than_half()
    {
        double air = AirDensityFactor.RelativeTo20Celsius(pressureKilopascals: 98, temperatureCelsius: 12);
        double needed = TesterGap.BreakdownKilovolts(ElectrodeShape.BluntPoints, gapMillimetres: 8, air);
        double band = TesterGap.RelativeUncertainty(ElectrodeShape.BluntPoints, gapMillimetres: 8);
        double chanceThatTwelveKilovoltsJump = LogNormal.Cumulative(12, needed, band);

        Expect.Within(Tolerances.PrintedThreeDigits, 11.4, needed);
        Assert.InRange(chanceThatTwelveKilovoltsJump, 0.5, 0.6);
    }

    [Fact]
    [Truth(From.Derived, "the page a stranger copies from is the code that is compiled here")]
    public void Every_line_of_the_page_s_example_is_compiled_above()
    {
        string[] page = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "README.md"));
        string[] example = page.SkipWhile(line => line != "```csharp").Skip(1).TakeWhile(line => line != "```").ToArray();
        Assert.NotEmpty(example);
        Assert.True(page.Length <= 20);
        string source = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "ReadmeExampleTests.cs"));
        Assert.All(example, line => Assert.Contains("        " + line + "\n", source, StringComparison.Ordinal));
    }
}
