using System.Globalization;
using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Beliefs;
using Undercowl.Diagnosis.Tests.Fixtures;
using Undercowl.Knowledge;
using Undercowl.KnowledgeCompiler;
using Xunit;

namespace Undercowl.Diagnosis.Tests.Why;

/// <summary>The audit names the numbers that a belief rests on: no other number moves it, and each stands where it says.</summary>
public sealed class AuditTests
{
    /// <summary>Numbers outside the audit that are tried, evenly over the knowledge.</summary>
    private const int Others = 45;

    private static readonly Lazy<IReadOnlyDictionary<string, KnowledgeNumber>> Numbers = new(() => KnowledgeNumbers.Of(Shop.Knowledge).ToDictionary(n => n.Address));

    public static TheoryData<int> Jobs => [.. Enumerable.Range(0, Finished.Jobs.Count)];

    [Theory]
    [MemberData(nameof(Jobs))]
    public void Every_number_is_in_the_knowledge_with_that_value_and_source(int job)
    {
        var audit = Audit(job);
        Assert.NotEmpty(audit.Factors);
        Assert.All(audit.Factors.Where(f => f.SourceKind != "entered"), factor =>
        {
            var number = Numbers.Value[factor.Address];
            Assert.Equal(number.Value, factor.Value);
            Assert.Equal(number.Source, factor.Source);
        });
    }

    [Theory]
    [MemberData(nameof(Jobs))]
    public void No_number_outside_the_audit_moves_the_belief_and_some_within_do(int job)
    {
        var (_, story, cause) = Finished.Jobs[job];
        var audit = Audit(job);
        var named = audit.Factors.Select(f => f.Address).ToHashSet();
        // Minutes, prices, plausible ranges and what only sensitivity or the screen reads are no part of a belief at all.
        // A row of chances adds up to 1, so that its numbers move together.
        var rows = named.Where(KnowledgeNumbers.IsChoice).Select(Row).ToHashSet();
        var outside = Numbers.Value.Keys.Where(a => !named.Contains(a) && IsModel(a) && !(KnowledgeNumbers.IsChoice(a) && rows.Contains(Row(a)))).ToArray();
        foreach (var address in outside.Where((_, i) => i % Math.Max(1, outside.Length / Others) == job))
        {
            if (Changed(story, cause, address, Numbers.Value[address].Value * 0.9) is { } instead)
            {
                Assert.True(Math.Abs(instead - audit.AsFound) < 1e-12, $"{address} moves {cause} from {audit.AsFound} to {instead}");
            }
        }

        var moved = audit.Factors.Where(f => f.Use is "reading" or "prior").Take(8).Count(f => Changed(story, cause, f.Address, f.Value * 0.9) is { } instead && Math.Abs(Decibans.Of(instead) - Decibans.Of(audit.AsFound)) > 1e-6);
        Assert.InRange(moved, 4, 8);
    }

    [Fact]
    public void Each_number_stands_on_the_line_that_is_told()
    {
        var compiled = KnowledgeFolder.Compile(Repository.PathOf("knowledge"));
        var known = KnowledgeNumbers.Of(compiled.Knowledge!).ToArray();
        Assert.InRange(known.Length, 1000, 100_000);
        Assert.All(known, number =>
        {
            var at = compiled.Lines[number.Address].Split(':');
            var line = File.ReadLines(Repository.PathOf(at[0])).ElementAt(int.Parse(at[1], CultureInfo.InvariantCulture) - 1);
            Assert.Contains(number.Value.ToString(CultureInfo.InvariantCulture), line, StringComparison.Ordinal);
        });
    }

    private static AuditAnswer Audit(int job) => Finished.Jobs[job].Story.Diagnosis.Audit(Finished.Jobs[job].Cause);

    /// <summary>Null where the knowledge cannot have that number.</summary>
    private static double? Changed(Story story, string cause, string address, double value)
    {
        try
        {
            return Shop.Workbench.With([(address, value)]).Open(story.Job).Belief.Causes().Single(c => c.Cause == cause).AsFound;
        }
        catch (DiagnosisException)
        {
            return null;
        }
    }

    private static string Row(string address) => address[..address.LastIndexOf('/')];

    private static bool IsModel(string address) => address.Split('/') is [var room, ..] and [.., var last]
        && room is "parts" or "quantities" or "tools" or "hands" or "complaints" or "checks" or "set-ups" or "specs"
        && last is not ("minutes" or "low" or "high" or "revision" or "value");
}
