using System.Text.Json;
using Undercowl.Cli.Tests.Fixtures;
using Xunit;

namespace Undercowl.Cli.Tests.Working;

/// <summary>Places smelt clear count for what the vapour interlock wants, and what it still wants is named.</summary>
public sealed class VentilateTests
{
    private static readonly string[] Conditions = ["air-clear", "leak-stopped", "cylinders-cleared", "holes-closed"];

    [Fact]
    public void Nothing_recorded_yet_says_that_one_reading_is_enough_and_all_places_clear_lift_it()
    {
        using var desk = Begun();
        var text = desk.Run("undercowl ventilate visit.jsonl").Good().Out.ReplaceLineEndings(" ");
        Assert.Contains("One is enough: record fuel-smell none", text, StringComparison.Ordinal);
        Assert.Contains("--clear cowl,bilge,tank", text, StringComparison.Ordinal);

        var some = Vapour(desk.Run("undercowl ventilate visit.jsonl --clear cowl --json"));
        Assert.False(some.GetProperty("clear").GetBoolean());
        Assert.Equal(["bilge", "tank"], Texts(some.GetProperty("toSmell")));
        Assert.Equal(["fuel-smell none"], Texts(some.GetProperty("enough")));

        var all = Vapour(desk.Run("undercowl ventilate visit.jsonl --clear bilge,tank --json"));
        Assert.True(all.GetProperty("clear").GetBoolean());
        Assert.Empty(Texts(all.GetProperty("toSmell")));
    }

    [Fact]
    public void After_a_smell_clear_air_is_one_condition_and_each_of_the_others_is_named_until_it_is_met()
    {
        using var desk = Begun();
        desk.Run("undercowl record visit.jsonl fuel-smell strong").Good();
        Assert.Equal(Conditions, Missing(Vapour(desk.Run("undercowl ventilate visit.jsonl --json"))));
        var aired = desk.Run("undercowl ventilate visit.jsonl --clear cowl,bilge,tank");
        Assert.All(Conditions[1..], c => Assert.Contains($"--met {c}", aired.Good().Out, StringComparison.Ordinal));
        Assert.DoesNotContain("--met air-clear", aired.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("One is enough", aired.Out, StringComparison.Ordinal);
        Assert.Equal(Conditions[1..], Missing(Vapour(desk.Run("undercowl ventilate visit.jsonl --json"))));
        Assert.True(Vapour(desk.Run($"undercowl ventilate visit.jsonl --met {string.Join(' ', Conditions[1..])} --json")).GetProperty("clear").GetBoolean());
    }

    [Fact]
    public void The_last_condition_may_be_the_air()
    {
        using var desk = Begun();
        desk.Run("undercowl record visit.jsonl fuel-smell strong").Good();
        Assert.False(Vapour(desk.Run($"undercowl ventilate visit.jsonl --met {string.Join(' ', Conditions[1..])} --json")).GetProperty("clear").GetBoolean());
        Assert.True(Vapour(desk.Run("undercowl ventilate visit.jsonl --clear cowl,bilge,tank --json")).GetProperty("clear").GetBoolean());
    }

    [Fact]
    public void Air_smelt_before_the_fuel_was_found_does_not_count()
    {
        using var desk = Begun();
        desk.Run("undercowl ventilate visit.jsonl --clear cowl,bilge").Good();
        desk.Run("undercowl record visit.jsonl fuel-smell strong").Good();
        var vapour = Vapour(desk.Run("undercowl ventilate visit.jsonl --clear tank --json"));
        Assert.Equal(Conditions, Missing(vapour));
        Assert.Equal(["cowl", "bilge"], Texts(vapour.GetProperty("toSmell")));
    }

    private static Desk Begun()
    {
        var desk = new Desk();
        desk.Run("undercowl start visit.jsonl --layout two-stroke-3-cdi --complaint no-start").Good();
        return desk;
    }

    private static JsonElement Vapour(Ran ran) => ran.Json().GetProperty("interlocks").EnumerateArray().Single(i => i.GetProperty("id").GetString() == "fuel-vapour");

    private static string[] Missing(JsonElement interlock) => [.. interlock.GetProperty("missing").EnumerateArray().Select(m => m.GetProperty("id").GetString()!)];

    private static string[] Texts(JsonElement list) => [.. list.EnumerateArray().Select(t => t.GetString()!)];
}
