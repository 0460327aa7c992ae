namespace Undercowl.Physics;

/// <summary>What to do with a value beyond a published table's first or last row.</summary>
public enum OutsideTable
{
    /// <summary>Throw <see cref="PhysicsRangeException"/>; the default.</summary>
    Refuse = 0,

    /// <summary>Use the extension the table's type states, up to the limit it states; an estimate, no longer the table.</summary>
    UseStatedExtension = 1,
}
