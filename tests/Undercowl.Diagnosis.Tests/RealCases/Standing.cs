using System.IO.Enumeration;
using Undercowl.Diagnosis.Beliefs;
using Undercowl.Diagnosis.Tests.Fixtures;

namespace Undercowl.Diagnosis.Tests.RealCases;

/// <summary>Where the stated cause of a case stands among all that may be wrong, as found.</summary>
/// <param name="Probability">That at least one of the causes named holds.</param>
/// <param name="Rank">1 and one more for each respect of a part (its conditions taken together) that is more likely; what only follows from others does not count.</param>
/// <param name="RankBesides">The same, where other faults that the account names do not count either.</param>
internal sealed record Standing(double Probability, int Rank, int RankBesides)
{
    public static Standing Of(RealCase real, Story story)
    {
        var named = new Verdict(story.Diagnosis, real.Stated).Named;
        double[] Above(params string[] left) => [.. story.Causes
            .Where(c => !c.Consequence && !Array.Exists(left, n => FileSystemName.MatchesSimpleExpression(n, c.Cause, ignoreCase: false)))
            .GroupBy(c => (c.Part, c.Place, c.Output, c.Aspect)).Select(g => g.Sum(c => c.AsFound)).Where(p => Decibans.Of(p) > named)];
        return new Standing(1 - 1 / (1 + Math.Pow(10, named / 10)), 1 + Above(real.Stated).Length, 1 + Above([.. real.Stated, .. real.Besides]).Length);
    }
}
