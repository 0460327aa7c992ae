namespace Undercowl.Planning.Tests;

public class ReadmeExampleTests
{
    [Fact]
    public void The_example_in_the_readme_runs_and_prints_what_it_says()
    {
        var problem = new TroubleshootingProblem(
            new HypothesisTable { Weights = [0.7, 0.3], Components = 2, Broken = [true, false, false, true] },
            new ActionTable { Cost = [40, 10], Success = [1, 0, 0, 1] },
            new CheckTable { Cost = [2], Outcomes = [2], OutcomeProbability = [0.9, 0.1, 0.2, 0.8] },
            ClusterTable.None,
            systemTestCost: 1,
            referCost: 200);
        Ranking ranking = new Planner().Rank(problem);

        // Derived: acting 11 + .7*41 = 39.7 or 41 + .3*11 = 44.3; checking 2 + outcome 0 (.63, .06): 11*.69 + 41*.63 = 33.42
        // or 41*.69 + 11*.06 = 28.95; outcome 1 (.07, .24): 11*.31 + 41*.07 = 6.28; in all 37.23.
        Assert.Equal(PlanStep.Check(0), ranking.First.Step);
        Near.Equal(37.23, ranking.First.ExpectedCostToFinish);
        Near.Equal(39.7, ranking.ExpectedCostOfActing);
    }

    [Fact]
    public void The_readme_shows_this_very_example()
    {
        string[] test = File.ReadAllLines(Path.Combine(Root(), "tests/Undercowl.Planning.Tests/ReadmeExampleTests.cs"));
        string readme = File.ReadAllText(Path.Combine(Root(), "src/Undercowl.Planning/README.md"));
        string[] example = [.. readme.Split("```")[1].Split('\n')[1..].Select(l => l.Trim()).Where(l => l.Length > 0)];
        Assert.InRange(example.Length, 5, 12);
        string[] code = [.. test.Select(l => l.Trim())];
        Assert.All(example, line => Assert.Contains(line, code));
        Assert.InRange(readme.TrimEnd().Split('\n').Length, 5, 20);
    }

    private static string Root()
    {
        for (DirectoryInfo? at = new(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "Directory.Build.props")) && Directory.Exists(Path.Combine(at.FullName, "src")))
                return at.FullName;
        }

        throw new DirectoryNotFoundException("no repository above the tests");
    }
}
