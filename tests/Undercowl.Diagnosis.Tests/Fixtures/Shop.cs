using Undercowl.Knowledge;
using Undercowl.KnowledgeCompiler;

namespace Undercowl.Diagnosis.Tests.Fixtures;

/// <summary>The knowledge of the repository with the test layouts added, compiled once.</summary>
internal static class Shop
{
    /// <summary>Any hash will do: jobs are told here and read here.</summary>
    private static readonly string Hash = "sha256:" + new string('0', 64);

    private static readonly Lazy<KnowledgeBase> Compiled = new(() =>
    {
        var result = KnowledgeFolder.Compile(Repository.PathOf("knowledge"), Repository.PathOf("tests/layouts"));
        return result.Knowledge ?? throw new InvalidOperationException(string.Join(Environment.NewLine, result.Problems));
    });

    public static KnowledgeBase Knowledge => Compiled.Value;

    public static Workbench Workbench => field ??= new Workbench(Knowledge, Hash);

    /// <summary>A job in which no fuel is smelt, so that nothing is withheld on that account.</summary>
    public static Story Story(string layout, string complaint) => new Story(Workbench, layout, complaint).Find("fuel-smell", "none");

    /// <summary>The same with other knowledge.</summary>
    public static Story Story(KnowledgeBase knowledge, string layout, string complaint) =>
        new Story(ReferenceEquals(knowledge, Knowledge) ? Workbench : new Workbench(knowledge, Hash), layout, complaint).Find("fuel-smell", "none");

    /// <summary>The same shop, where one condition of one aspect is <paramref name="times"/> as usual.</summary>
    public static Workbench WithPrior(string part, string aspect, string condition, double times)
    {
        var knowledge = Knowledge with { Parts = [.. Knowledge.Parts.Select(p => p.Id != part ? p : p with { Aspects = [.. p.Aspects.Select(Of)] })] };
        return new Workbench(knowledge, Hash);

        Aspect Of(Aspect a) => a.Id != aspect ? a : a with
        {
            Conditions = [.. a.Conditions.Select(c => c.Id != condition ? c : c with { Prior = c.Prior * times })],
        };
    }
}
