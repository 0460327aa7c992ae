using System.Globalization;
using Undercowl.Jobs;
using Undercowl.Physics;

namespace Undercowl.Diagnosis.Readings;

/// <summary>
/// The air around the engine, as far as it can be: -60 to 60 °C, 60 to 110 kPa, -450 to 4000 m (within these the air density
/// factor stays where the breakdown laws hold). What is beyond, as in a log from elsewhere, is taken as not said.
/// </summary>
/// <param name="Celsius">Air temperature, or null.</param>
/// <param name="Kilopascals">Air pressure at the place, from the height where it was not measured, or null.</param>
internal sealed record PlausibleAir(double? Celsius, double? Kilopascals)
{
    private static readonly Range Temperature = new("air temperature", "°C", -60, 60);
    private static readonly Range Pressure = new("air pressure", "kPa", 60, 110);
    private static readonly Range Altitude = new("height above the sea", "m", -450, 4000);

    /// <summary>By the names of the ambient entry's members.</summary>
    public static PlausibleAir Of(IReadOnlyDictionary<string, Measured> said) => new(
        Temperature.Within(said.GetValueOrDefault("temperature")),
        Pressure.Within(said.GetValueOrDefault("pressure"))
            ?? (Altitude.Within(said.GetValueOrDefault("altitude")) is { } metres ? StandardAtmosphere.PressureKilopascals(metres) : null));

    /// <summary>What is beyond its range, in words; null when nothing is.</summary>
    public static string? Fault(Ambient said) => Temperature.Fault(said.Temperature) ?? Pressure.Fault(said.Pressure) ?? Altitude.Fault(said.Altitude);

    private sealed record Range(string Name, string Unit, double From, double To)
    {
        public double? Within(Measured? said) => said is not null && Value(said) is { } value && value >= From && value <= To ? value : null;

        public string? Fault(Measured? said) => said is null || Within(said) is not null ? null
            : Value(said) is { } value
                ? string.Create(CultureInfo.InvariantCulture, $"The {Name} is {value:0.##} {Unit}; it must be from {From} to {To} {Unit}.")
                : $"The {Name} is in \"{said.Unit}\"; give it in {Unit}.";

        private double? Value(Measured said) => Units.Convert((double)said.Value.Value, said.Unit, Unit);
    }
}
