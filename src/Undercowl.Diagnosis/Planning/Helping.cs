using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.History;
using Undercowl.Diagnosis.Safety;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Planning;

/// <summary>
/// What is brought about before a remedy because the work would fail without it, as a booster across a tired battery before a flooded engine is cranked clear. It is
/// a step of its own, since it is done with other tools, has cautions of its own and is to be undone.
/// </summary>
internal sealed class Helping(JobNetwork network, StandingEngine standing, IReadOnlyList<InterlockStatus> interlocks, Costs costs, StepDescriptions words)
{
    /// <summary>The help comes before what it helps, where that is one of the first so many proposals. Common practice, no source: early, not at once.</summary>
    private const int Among = 2;

    /// <param name="proposals">Best first; the help is put among them.</param>
    /// <param name="remedyOf">The remedy of a proposal, if it is one.</param>
    /// <param name="failing">Cost of the work and of seeing that it failed.</param>
    /// <param name="levelChances">Chance of each level of a quantity now.</param>
    public void PutBefore(List<ProposedStep> proposals, Func<ProposedStep, Knowledge.Remedy?> remedyOf, Func<Knowledge.Remedy, double> failing, Func<string, double[]> levelChances)
    {
        for (var i = 0; i < Math.Min(Among, proposals.Count); i++)
        {
            if (remedyOf(proposals[i]) is not { HelpedBy: { } help } remedy || network.Model.SetUpKey(help.SetUp) is not { } key)
            {
                continue;
            }

            var value = key.Values.First(v => v.Id == help.Value);
            var missing = value.Lifts.Keys.Select(q => 1 - levelChances(q)[0]).DefaultIfEmpty().Max();
            // Pays for itself: where it is wanting the work is done in vain.
            if (standing.Left.GetValueOrDefault(key.Id, key.Default) != help.Value && !Lacking(help) && !Held(remedy, value)
                && missing * failing(remedy) >= (value.Minutes ?? 0) * costs.PerMinute)
            {
                proposals.Insert(i, words.Help(key, value, help, remedy, proposals[i].ExpectedCostToFinish));
            }

            return;
        }
    }

    private bool Lacking(Help help) => help.Tools.Any(t => network.Projection.Tools.TryGetValue(t, out var have) && !have);

    /// <summary>Withheld by more than the work itself brings about.</summary>
    private bool Held(Knowledge.Remedy remedy, SetUpValue value) =>
        interlocks.Any(i => i.Holds(value.Hazards) && !(i.Missing.Count > 0 && i.Missing.All(m => remedy.Meets.Contains(m.Id))));
}
