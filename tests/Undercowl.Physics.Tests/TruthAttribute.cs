using Xunit.v3;

namespace Undercowl.Physics.Tests;

/// <summary>Where a test's expected numbers come from.</summary>
public enum From
{
    /// <summary>A standard, handbook or published table; the citation says which, and who quoted it if it was quoted.</summary>
    Certified = 1,

    /// <summary>Another method or tool.</summary>
    Independent,

    /// <summary>Worked by hand or from the definition; the working is beside it.</summary>
    Derived,

    /// <summary>Recalled, to be confirmed against the original.</summary>
    Memory,
}

/// <summary>Labels a test with the source of its expected numbers, and shows up as a trait ("truth") to filter by.</summary>
[AttributeUsage(AttributeTargets.Method | AttributeTargets.Class, AllowMultiple = true)]
public sealed class TruthAttribute(From from, string source) : Attribute, ITraitAttribute
{
    public From From { get; } = from;

    public string Source { get; } = source;

    public IReadOnlyCollection<KeyValuePair<string, string>> GetTraits() => [new("truth", From.ToString())];
}
