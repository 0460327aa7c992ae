using System.Globalization;
using Undercowl.Diagnosis.Engine;
using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Readings;

/// <summary>
/// Drafts an engine's own figure as it is typed. What no engine can have (0, below 0, of another dimension, low above high) is
/// refused; what hardly any has is taken with a warning, because the manual prevails.
/// </summary>
public static class OwnFigure
{
    /// <summary>A figure so many times beside the generic range is more likely a slip in the unit: estimate.</summary>
    private const double FarFromGeneric = 10;

    /// <param name="diagnosis">The job as it is.</param>
    /// <param name="part">The part, for example <c>ignition-coil</c> or <c>ignition-coil@cyl:2</c>.</param>
    /// <param name="item">Which figure.</param>
    /// <param name="origin">Where it was read.</param>
    /// <param name="low">Least good value with its unit, or null.</param>
    /// <param name="high">Greatest good value with its unit, or null.</param>
    /// <param name="nominal">The value meant with its unit, or null.</param>
    public static Draft Of(JobDiagnosis diagnosis, string part, string item, string origin, string? low, string? high, string? nominal)
    {
        ArgumentNullException.ThrowIfNull(diagnosis);
        var model = diagnosis.Network.Model;
        var meant = PartId.Parse(part);
        string[] places = [.. model.Parts.Where(p => p.Kind.Id == meant.Kind).Select(p => p.Place)];
        if (places.Length == 0)
        {
            throw new DiagnosisException($"There is no part \"{meant.Kind}\" on this engine.", Near.Mend(meant.Kind, model.Parts.Select(p => p.Kind.Id)));
        }

        if (meant.Place is { } place && !places.Contains(place.Text))
        {
            throw new DiagnosisException($"There is no {meant.Kind} at {place}.", Near.Mend(place.Text, places));
        }

        Spec[] generic = [.. model.Knowledge.Specs.Where(s => s.Only.Holds(model.Layout))];
        var known = generic.FirstOrDefault(s => s.Item == item)
            ?? throw new DiagnosisException($"No check is judged by a figure \"{item}\".", Near.Mend(item, generic.Select(s => s.Item)));
        var specs = new Specs(meant, item, origin, Value(known, "low", low), Value(known, "high", high), Value(known, "nominal", nominal));
        if (specs is { Low: null, High: null, Nominal: null })
        {
            throw new DiagnosisException("The specs give no figure.", "Give --low, --high or --nominal.");
        }

        Ordered(known, specs.Low, specs.High);
        Ordered(known, specs.Low, specs.Nominal);
        Ordered(known, specs.Nominal, specs.High);
        return new Draft([specs], [.. new[] { specs.Low, specs.High, specs.Nominal }.OfType<Measured>().Distinct().Select(m => Implausible(model, known, m)).OfType<string>()]);
    }

    private static Measured? Value(Spec known, string bound, string? text)
    {
        if (text is null)
        {
            return null;
        }

        var example = string.Create(CultureInfo.InvariantCulture, $"Write a number above 0 in {string.Join(", ", Units.Like(known.Unit))}, for example --{bound} {known.Low ?? known.High}{known.Unit}.");
        return Measurement.TryParse(text, known.Unit) is not { } measured || Units.Convert((double)measured.Value.Value, measured.Unit, known.Unit) is not { } value
            ? throw new DiagnosisException($"\"{text}\" is no {known.Name}.", example)
            : value > 0 ? measured
            : throw new DiagnosisException($"{measured} is no {known.Name}: it is never 0 or below.", example);
    }

    private static void Ordered(Spec known, Measured? less, Measured? more)
    {
        if (less is not null && more is not null && In(known, less) > In(known, more))
        {
            throw new DiagnosisException($"{less} is above {more}.", "The least value is --low, the greatest --high, and --nominal lies between them.");
        }
    }

    private static string? Implausible(EngineModel model, Spec known, Measured measured)
    {
        var value = In(known, measured);
        var (least, most) = (known.Low ?? known.High!.Value, known.High ?? known.Low!.Value);
        var beyond = model.Checks.Where(c => c.Likelihood.Reference == known.Item).Select(c => c.Number).OfType<NumberForm>()
            .Any(form => Units.Convert(value, known.Unit, form.Unit) is { } read && (read < form.Low || read > form.High));
        return beyond || value < least / FarFromGeneric || value > most * FarFromGeneric
            ? string.Create(CultureInfo.InvariantCulture, $"{measured} is far from {least}{(most > least ? $" to {most}" : "")} {known.Unit}, the usual {known.Name}: is the unit right? Withdraw it if not.")
            : null;
    }

    private static double In(Spec known, Measured measured) => Units.Convert((double)measured.Value.Value, measured.Unit, known.Unit)!.Value;
}
