namespace Undercowl.Diagnosis.Tests.Twins;

/// <summary>
/// Worlds to compare two readings in: whatever has a name may be out of order in them, be its chance ever so small or
/// nought. By number; the first has everything in order.
/// </summary>
internal sealed class Supposed : IWorld
{
    /// <summary>How many worlds are looked at.</summary>
    public const int Worlds = 3000;

    private ulong _world;
    private double _amiss;

    /// <summary>The number of the world to suppose from now on.</summary>
    public void Suppose(int world)
    {
        _world = Mixed((ulong)world);

        // From one or two things amiss among a hundred to many of them.
        _amiss = world == 0 ? 0 : 0.01 * Math.Pow(2, world % 6);
    }

    /// <summary>By the name, not by the order of asking: two readings ask in different orders.</summary>
    public int Draw(string name, double[] chances)
    {
        var hash = _world;
        foreach (var letter in name)
        {
            hash = (hash ^ letter) * 0x100000001b3;
        }

        hash = Mixed(hash);
        return (hash >> 11) * Math.Pow(2, -53) < _amiss ? 1 + (int)(Mixed(hash) % (ulong)(chances.Length - 1)) : 0;
    }

    private static ulong Mixed(ulong value)
    {
        value += 0x9e3779b97f4a7c15;
        value = (value ^ (value >> 30)) * 0xbf58476d1ce4e5b9;
        value = (value ^ (value >> 27)) * 0x94d049bb133111eb;
        return value ^ (value >> 31);
    }
}
