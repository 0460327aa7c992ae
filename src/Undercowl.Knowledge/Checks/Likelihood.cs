namespace Undercowl.Knowledge;

/// <summary>How a reading depends on what is the case, and how it errs: lastingly (the same way twice) and afresh.</summary>
public sealed record Likelihood
{
    /// <summary>The quantity read, at the check's place and in its set-up; null when an aspect is read.</summary>
    public string? Quantity { get; init; }

    /// <summary>Part kind and aspect read, as <c>kind.aspect</c>: the part sitting at the check's place.</summary>
    public string? Aspect { get; init; }

    /// <summary>Tool whose own aspect is read (<c>tool.aspect</c>), for checks that prove the tool.</summary>
    public string? Tool { get; init; }

    public required LikelihoodModel Model { get; init; }

    /// <summary>Chance (0 to 1) that one look or one measurement differs from what looking again would show.</summary>
    public required double Fresh { get; init; }

    /// <summary>Source of all numbers in this likelihood.</summary>
    public required string Source { get; init; }

    /// <summary>Table model: level to choice to probability. Each row sums to 1.</summary>
    public Dictionary<string, Dictionary<string, double>> Given { get; init => field = value ?? []; } = [];

    /// <summary>Gap model: the setting that holds the tester gap, and how wide the voltage scatters (standard deviation of its natural logarithm).</summary>
    public string? Gap { get; init; }

    public double? Spread { get; init; }

    /// <summary>Gap model: the choices that mean no jump, now and then, always; e.g. for dim sparks and misses.</summary>
    public GapChoices? GapChoices { get; init; }

    /// <summary>Density model: <c>absolute</c>, or the spec item that the value is divided by (its middle, or its only bound).</summary>
    public string? Reference { get; init; }

    /// <summary>Density model: the correction made to the value before it is compared.</summary>
    public Correction Correct { get; init; } = Correction.None;

    /// <summary>Density model: level or condition to the density of the compared value.</summary>
    public Dictionary<string, DensityRow> Densities { get; init => field = value ?? []; } = [];

    /// <summary>Density model: further spread (of the natural logarithm) when only a generic range is known.</summary>
    public double? GenericSpread { get; init; }

    /// <summary>Density model: true when the like places of the engine are compared with each other, as well as with a generic range.</summary>
    public bool Fellows { get; init; }

    /// <summary>Density model: chance (0 to 1) of a reading that has nothing to do with the case.</summary>
    public double? Outlier { get; init; }
}

public enum LikelihoodModel
{
    Table,
    Gap,
    Density,
}

public sealed record GapChoices
{
    public required string Never { get; init; }

    public required string Sometimes { get; init; }

    public required string Always { get; init; }
}

/// <summary>Corrections of a measured value, each a function of the Physics room.</summary>
public enum Correction
{
    None,

    /// <summary>A copper winding's resistance to 20 °C, from the ambient temperature.</summary>
    CopperTo20,

    /// <summary>A gauge compression reading to sea level, from the altitude.</summary>
    GaugeToSeaLevel,

    /// <summary>A winding's peak voltage to the speed of its specification, from the cranking speed found.</summary>
    PeakToSpecSpeed,

    /// <summary>A lead-acid battery's rest voltage to the table's temperature.</summary>
    RestVoltageTo27,
}

/// <summary>A log-normal (or, for values about zero, normal) density of the compared value.</summary>
public sealed record DensityRow
{
    /// <summary>The middle, in the reference (1 is on the spec) or in the check's unit.</summary>
    public required double Median { get; init; }

    /// <summary>Standard deviation of the natural logarithm.</summary>
    public required double Spread { get; init; }

    /// <summary>Chance (0 to 1) of "over range" instead of a number.</summary>
    public double Open { get; init; }
}
