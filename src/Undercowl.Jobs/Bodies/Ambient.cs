using System.Text.Json;

namespace Undercowl.Jobs;

/// <summary>The air around the engine. At least one is given; the latest entry wins, quantity by quantity.</summary>
/// <param name="Temperature">Air temperature.</param>
/// <param name="Pressure">Air pressure at the place, not reduced to sea level.</param>
/// <param name="Altitude">Height above the sea.</param>
/// <param name="Humidity">Relative humidity.</param>
public sealed record Ambient(Measured? Temperature = null, Measured? Pressure = null, Measured? Altitude = null, Measured? Humidity = null) : EntryBody
{
    internal const string KindName = "ambient";

    public override string Kind => KindName;

    internal static Ambient Read(Members m) => m.IsEmpty
        ? throw new JobException("The ambient says nothing.", "Give temperature, pressure, altitude or humidity.")
        : new(
            m.OptionalMeasured("temperature", "the air temperature"),
            m.OptionalMeasured("pressure", "the air pressure at the place"),
            m.OptionalMeasured("altitude", "the height above the sea"),
            m.OptionalMeasured("humidity", "the relative humidity"));

    internal override void Write(Utf8JsonWriter json)
    {
        json.Measured("temperature", Temperature);
        json.Measured("pressure", Pressure);
        json.Measured("altitude", Altitude);
        json.Measured("humidity", Humidity);
    }
}
