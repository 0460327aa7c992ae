namespace Undercowl.Physics;

/// <summary>How a peak voltage follows engine speed. There is no default: 0 is no family and is refused.</summary>
public enum PeakVoltageFamily
{
    /// <summary>A winding swept by a magnet, read open or lightly loaded: induced voltage is proportional to speed.</summary>
    Winding = 1,

    /// <summary>An output held by a regulator or converter: nearly constant with speed, so nothing to correct.</summary>
    RegulatedOutput = 2,
}
