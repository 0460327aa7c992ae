namespace Undercowl.Physics;

/// <summary>
/// Shape of the two electrodes of an adjustable tester gap: a property of the tool. There is no default: the value 0 is
/// not a shape and is refused, because the shape alone changes the answer threefold.
/// </summary>
public enum ElectrodeShape
{
    /// <summary>Sharp points, like sewing needles.</summary>
    Needle = 1,

    /// <summary>Points that have been rounded or flattened, or screw ends: the usual tester. Between needle and sphere.</summary>
    BluntPoints = 2,

    /// <summary>Polished balls of 20 mm or more; their diameter must be given.</summary>
    Sphere = 3,

    /// <summary>Wide faces close together; gap well below their width.</summary>
    NearUniform = 4,
}
