namespace Undercowl.Physics;

/// <summary>Metal of a winding or wire. There is no default: 0 is no metal and is refused.</summary>
public enum ConductorMetal
{
    /// <summary>Annealed copper, 0.00393 per K at 20 degC (IEC 60028, as quoted in public code).</summary>
    Copper = 1,

    /// <summary>Hard-drawn aluminium, 0.00403 per K at 20 degC (IEC 60889, as quoted in public code).</summary>
    Aluminium = 2,
}
