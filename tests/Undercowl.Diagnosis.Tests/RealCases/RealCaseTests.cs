using System.Collections.Concurrent;
using Xunit;

namespace Undercowl.Diagnosis.Tests.RealCases;

/// <summary>
/// Published, resolved repairs told entry by entry. The oracle is what the account says was at fault; each case's file has the account in our own
/// words. Cases are mended by mending the model, and a number that was changed because of one says so in its source.
/// </summary>
public sealed class RealCaseTests
{
    private static readonly ConcurrentDictionary<string, (Standing Standing, IReadOnlyList<string> WithoutEffect)> Worked = [];

    public static TheoryData<string> Cases => [.. RealCase.Ids];

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_stated_cause_stands_first_or_the_case_says_why_not(string id)
    {
        var (real, standing) = (RealCase.Read(id), Of(id));
        Assert.True(standing.Rank == 1 == (real.Miss.Length == 0), $"{id}: rank {standing.Rank} with {standing.Probability:0.000}; \"{real.Miss}\"");
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Every_entry_of_an_account_can_be_said_and_has_effect(string id) => Assert.Empty(Work(id).WithoutEffect);

    [Fact]
    public void The_stated_cause_is_first_in_seven_of_ten_cases_and_among_the_first_three_in_nine_of_ten()
    {
        Standing[] all = [.. RealCase.Ids.Select(Of)];
        Assert.True(all.Length >= 9);
        Assert.True(all.Count(s => s.Rank == 1) >= 0.7 * all.Length, "first");
        Assert.True(all.Count(s => s.Rank <= 3) >= 0.9 * all.Length, "among the first three");
    }

    internal static Standing Of(string id) => Work(id).Standing;

    private static (Standing Standing, IReadOnlyList<string> WithoutEffect) Work(string id) => Worked.GetOrAdd(id, known =>
    {
        var real = RealCase.Read(known);
        var story = real.Told();
        return (Standing.Of(real, story), [.. story.Diagnosis.WithoutEffect.Select(f => $"{f.Check}: {f.Why}")]);
    });
}
