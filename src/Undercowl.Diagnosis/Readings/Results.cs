using Undercowl.Diagnosis.Engine;
using Undercowl.Diagnosis.Graph;
using Undercowl.Diagnosis.History;
using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Readings;

/// <summary>
/// Lays what came of remedies: the complaint's own test read good or not, or, with no change, the complaint is made again. Better or as before tells whether anything was mended
/// since it was last tried: a condition that was bad then and is sound now. "For a time" is gone in one occasion and there in the next.
/// </summary>
internal sealed class Results(ConditionNodes conditions, Projection projection, EngineHistory history, Laying laying)
{
    /// <summary>Name of the chance that what was mended is noticed while something else is still wrong.</summary>
    public const string Noticed = "noticed";

    /// <summary>Name of the chance that it is called better though nothing was mended.</summary>
    public const string Hoped = "hoped";

    private readonly EngineModel _model = conditions.Model;

    /// <summary>One of the chances above, as the knowledge has it for this engine.</summary>
    public static Parameter Chance(EngineModel model, string name) => model.Knowledge.Results.FirstOrDefault(r => r.Name == name && r.Only.Holds(model.Layout))
        ?? throw new DiagnosisException($"The knowledge lacks the chance {name} of what comes of a remedy.", "Add it to results.yaml.");

    /// <summary>The results that hold, in the order of their remedies; those of remedies unknown today, or not read by a table, say nothing.</summary>
    public IEnumerable<LaidResult> Laid()
    {
        var known = projection.Complaints.Select(said => (Said: said, Complaint: _model.Knowledge.ComplaintOf(said.Id)))
            .Where(c => c.Complaint is not null).ToArray();
        foreach (var remedy in projection.All<Jobs.Remedy>())
        {
            if (projection.ResultOf(remedy.Id) is { } came && _model.Remedies.Contains(_model.Knowledge.RemedyOf(remedy.Body.Action)))
            {
                yield return new LaidResult(remedy, came, [.. known.SelectMany(c => Told(remedy, came, c.Said, c.Complaint!))]);
            }
        }
    }

    private IEnumerable<(Signal Signal, double[] PerLevel)> Told(Said<Jobs.Remedy> remedy, RemedyResult came, Jobs.Complaint said, Knowledge.Complaint complaint)
    {
        var setUp = SetUpResolution.Of(said, complaint);
        var after = history.AfterRemedy(remedy.Entry);
        if (came == RemedyResult.NoChange)
        {
            var complained = _model.Quantity(complaint.Quantity);
            yield return Better(remedy.Entry, laying.Copies(after, setUp).Of(complained.Id, 0), complained, [.. complained.Levels.Select(l => complaint.Given[l])], better: false);
            yield break;
        }

        var test = _model.Knowledge.Checks.First(c => c.Id == complaint.SystemTest);
        if (test.Likelihood is not { Model: LikelihoodModel.Table, Quantity: { } id })
        {
            yield break;
        }

        var quantity = _model.Quantity(id);
        var doubt = _model.Knowledge.Hands.FirstOrDefault(h => h.Id == remedy.Body.Hand)?.Doubt ?? 0;
        double[] good = [.. quantity.Levels.Select(l => (1 - doubt) * complaint.Good.Sum(c => test.Likelihood.Given[l].GetValueOrDefault(c)) + doubt * complaint.Good.Count / test.Choices.Count)];
        double[] not = [.. good.Select(g => 1 - g)];
        switch (came)
        {
            case RemedyResult.Cured:
                yield return (Tried(after), good);
                break;
            case RemedyResult.ForATime:
                yield return (Tried(history.AfterRemedy(remedy.Entry, "for a time")), good);
                yield return (Tried(history.AfterRemedy(remedy.Entry, "came back")), not);
                break;
            case RemedyResult.InPart:
                yield return Better(remedy.Entry, Tried(after), quantity, not, better: true);
                break;
            default:
                yield return (Tried(after), not);
                break;
        }

        Signal Tried(EngineState state) => laying.Copies(state, test.SetUp.Concat(setUp).DistinctBy(p => p.Key).ToDictionary()).Of(id, 0);
    }

    /// <summary>Still wrong, and called better or as before.</summary>
    private (Signal Signal, double[] PerLevel) Better(Entry remedy, Signal tried, Quantity quantity, double[] perLevel, bool better)
    {
        var (hoped, noticed) = (Chance(_model, Hoped).Value, Chance(_model, Noticed).Value);
        return (
            conditions.Graph.Function(
                $"tried after {remedy.Id}", [.. quantity.Levels, .. quantity.Levels.Select(l => l + ", something mended")],
                [tried, Mended(remedy)], levels => levels[0] + levels[1] * quantity.Levels.Count),
            [.. perLevel.Select(p => p * (better ? hoped : 1 - hoped)), .. perLevel.Select(p => p * (better ? noticed : 1 - noticed))]);
    }

    /// <summary>Whether a condition that was bad when the complaint was last tried has been mended since: 0 no, 1 yes.</summary>
    private Signal Mended(Entry remedy)
    {
        var (before, after) = (history.LastTriedBefore(remedy), history.AfterRemedy(remedy));
        var mended = Signal.Constant(0);
        foreach (var aspect in history.MendedSinceTried(remedy).Where(a => !a.Aspect.Consequence))
        {
            Signal Of(EngineState state) => new(conditions.NodeOf(state, aspect), NodeGraph.Identity(aspect.StateNames.Length));
            mended = conditions.Graph.Function($"mended by {remedy.Id}", ["no", "yes"], [mended, Of(before), Of(after)], s => s[0] == 1 || (s[1] > 0 && s[2] == 0) ? 1 : 0);
        }

        return mended;
    }
}
