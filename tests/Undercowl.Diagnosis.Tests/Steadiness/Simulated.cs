using System.Globalization;
using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Planning;
using Undercowl.Diagnosis.Readings;
using Undercowl.Diagnosis.Tests.Fixtures;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Tests.Steadiness;

/// <summary>
/// A job whose readings are drawn as the model expects them: each from an engine drawn from the belief so far, which is the same as drawing one engine
/// at the start and keeping to it. From a seed.
/// </summary>
internal sealed class Simulated(Story story, int seed)
{
    /// <summary>A standard normal's middle values at equal chances, so that a draw is one of nine.</summary>
    private static readonly double[] Normal = [-1.59, -0.97, -0.59, -0.28, 0, 0.28, 0.59, 0.97, 1.59];

    private readonly Random _random = new(seed);
    private int _draws;

    public Story Story => story;

    /// <summary>Does the check there and writes down what it shows; false where it cannot be read.</summary>
    public bool Do(Check check, string place)
    {
        var diagnosis = story.Diagnosis;
        var network = diagnosis.Belief.Network;
        var setUp = History.SetUpResolution.Of(network.Model, check, place, diagnosis.Standing);
        if (check.Swap is not null || network.Laying.Read(check, place, network.Laying.Copies(network.Now, setUp)) is not var (signal, levels))
        {
            return false;
        }

        var engine = new ForwardRun(network.Graph, diagnosis.Belief.Posterior.Sample((ulong)(seed * 1000 + ++_draws), 1), network.Network.Count);
        var level = engine.Level(0, signal);
        var at = network.Laying.Circumstances(check, place, null);
        var kilovolts = check.Likelihood.Model == LikelihoodModel.Gap ? Graph.SparkMargin.Numbers(network.Model, check.Likelihood.Quantity!) : null;
        var reading = check.Number is null
            ? Choice(check, OutcomeTable.Of(check, levels, at, kilovolts, setUp).Rows[level])
            : Number(check, check.Likelihood.Densities[levels[level]], at);
        story.Find(check.Id, reading, place);
        return true;
    }

    public int Next(int below) => _random.Next(below);

    public static string Words(ProposedStep step) => $"{step.Kind} {step.Id} {step.Place}";

    private string Choice(Check check, double[] chances)
    {
        var left = _random.NextDouble();
        for (var i = 0; i < chances.Length; i++)
        {
            if ((left -= chances[i]) < 0)
            {
                return check.Choices[i].Id;
            }
        }

        return check.Choices[^1].Id;
    }

    private string Number(Check check, DensityRow row, Circumstances at)
    {
        if (_random.NextDouble() < row.Open)
        {
            return "open";
        }

        var middle = at.Reference is { } reference ? Units.Convert(reference.Middle, reference.Unit, check.Number!.Unit)!.Value : 1;
        var value = middle * row.Median * Math.Exp(row.Spread * Normal[_random.Next(Normal.Length)]);
        return string.Create(CultureInfo.InvariantCulture, $"{Math.Clamp(value, check.Number!.Low, check.Number.High):0.####} {check.Number.Unit}");
    }
}
