using Undercowl.Diagnosis.Engine;
using Undercowl.Jobs;

namespace Undercowl.Diagnosis.Planning;

/// <summary>What time and giving up cost: the shop's own rate once it is entered.</summary>
/// <param name="PerMinute">Cost of a minute.</param>
/// <param name="SameCluster">Share of its minutes that a check takes when the one before was of its cluster.</param>
/// <param name="Refer">Cost of handing the job on, the wait and the second look included.</param>
/// <param name="Currency">Of all costs.</param>
internal sealed record Costs(double PerMinute, double SameCluster, double Refer, string Currency)
{
    public static Costs Of(EngineModel model, Projection projection)
    {
        double Default(string name) => model.Knowledge.Costs.FirstOrDefault(c => c.Name == name && c.Only.Holds(model.Layout))?.Value
            ?? throw new DiagnosisException($"The knowledge lacks the cost {name}.", "Add it to costs.yaml.");
        var own = projection.PerHour;
        var perMinute = (own is null ? Default("rate-per-hour") : (double)own.Value.Value) / 60;
        return new Costs(perMinute, Default("same-cluster"), Default("refer-minutes") * perMinute, own?.Currency ?? "units");
    }
}
