namespace Undercowl.Physics;

/// <summary>
/// Voltage a spark plug requires in a cylinder: V = 4.3 + 136 p/T + 324 p d/T, kV, p bar absolute, T kelvin, d mm. Pashley,
/// Stone and Roberts, SAE 2000-01-0245, quoted alike by a COBEM 2011 paper and public code (one forum copy prints
/// 146 for 136). A correlation for new plugs in firing engines, not a law.
/// </summary>
/// <remarks>
/// Caution: its constant term makes it useless in open air (0.6 mm at 1 bar: 5.4 kV against 2.9 kV of the uniform
/// field), so pressures below 3 bar are refused; that limit is ours. Also refused: gaps outside 0.3 to 2 mm, gas below
/// 300 K (compressed gas is warmer) and above 1200 K, pressures above 60 bar. Worn, sooted or cold plugs differ.
/// </remarks>
public static class PlugVoltageDemand
{
    /// <summary>kV.</summary>
    public const double Constant = 4.3;

    /// <summary>kV K/bar.</summary>
    public const double DensityTerm = 136;

    /// <summary>kV K/(bar mm).</summary>
    public const double GapTerm = 324;

    /// <summary>kV required at the plug at the moment of the spark.</summary>
    public static double RequiredKilovolts(double gapMillimetres, double pressureBarAbsolute, double gasKelvin)
    {
        PhysicsRangeException.ThrowIfOutside(
            gapMillimetres, 0.3, 2, "plug gap", "mm", "Give millimetres: 0.028 in (28 thou) is 0.71 mm.");
        PhysicsRangeException.ThrowIfOutside(
            pressureBarAbsolute, 3, 60, "cylinder pressure at the spark", "bar absolute",
            "Not for open air: use the uniform field there. 1000 kPa is 10 bar.");
        PhysicsRangeException.ThrowIfOutside(
            gasKelvin, 300, 1200, "gas temperature at the spark", "K", "Give kelvin: degC plus 273.15.");
        double density = pressureBarAbsolute / gasKelvin;
        return Constant + (DensityTerm * density) + (GapTerm * density * gapMillimetres);
    }
}
