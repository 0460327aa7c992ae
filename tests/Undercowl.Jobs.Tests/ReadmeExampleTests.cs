using System.Security.Cryptography;

namespace Undercowl.Jobs.Tests;

public sealed class ReadmeExampleTests
{
    [Fact]
    public void The_example_of_the_readme_compiles_and_does_what_it_says()
    {
        // README example begins
        var writer = new EntryWriter("tablet-3", TimeProvider.System, RandomNumberGenerator.Fill);
        var job = Job.Empty;
        job = job.With(writer.Next(job, new Swap("ignition-coil", Place.Parse("cyl:2"), Place.Parse("cyl:3"))));
        job = job.With(writer.Next(job, new Finding(
            "spark-at-tester", 1, Place.Parse("cyl:3"), new Dictionary<string, string>(), "opening", "technician", new ChoiceReading("none"))));
        var finding = Projection.Of(job).Findings[0];
        // README example ends
        Assert.Equal("ignition-coil", Assert.Single(finding.Swaps).Body.Part);
    }

    [Fact]
    public void The_readme_shows_that_very_code_and_is_no_longer_than_twenty_lines()
    {
        var readme = Resource.Lines("README.md");
        var shown = readme.SkipWhile(line => line != "```csharp").Skip(1).TakeWhile(line => line != "```");
        var compiled = Resource.Lines("ReadmeExampleTests.cs").SkipWhile(line => !line.Contains("// README example begins", StringComparison.Ordinal)).Skip(1)
            .TakeWhile(line => !line.Contains("// README example ends", StringComparison.Ordinal)).Select(line => line[8..]);
        Assert.Equal(compiled, shown);
        Assert.InRange(readme.Length, 1, 20);
    }
}
