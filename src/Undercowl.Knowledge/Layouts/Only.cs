namespace Undercowl.Knowledge;

/// <summary>
/// A condition on a layout's attributes: attribute name to the values it may have. Empty holds for every layout.
/// All named attributes must match; a layout that lacks a named attribute does not match.
/// </summary>
public sealed class Only : Dictionary<string, OneOrMore>
{
    public bool Holds(EngineLayout layout)
    {
        ArgumentNullException.ThrowIfNull(layout);
        foreach (var (attribute, values) in this)
        {
            if (!layout.Attributes.TryGetValue(attribute, out var value) || !values.Contains(value))
            {
                return false;
            }
        }

        return true;
    }
}
