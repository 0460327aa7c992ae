namespace Undercowl.Inference;

/// <summary>
/// The SplitMix64 generator (G. Steele, D. Lea, C. Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014):
/// 64 bits of state, integer arithmetic only, so that a seed gives the same draws on every platform and in every release.
/// Not for secrets.
/// </summary>
public sealed class SplitMix64(ulong seed)
{
    private ulong _state = seed;

    public ulong NextBits()
    {
        var z = _state += 0x9E3779B97F4A7C15;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }

    /// <summary>Uniform in [0, 1), a multiple of 2^-53.</summary>
    public double NextUnit() => (NextBits() >> 11) * (1.0 / (1UL << 53));

    /// <summary>Puts items in an order of which each is equally likely, from the last down (R. Durstenfeld, Algorithm 235, CACM 1964): as many numbers are drawn as there are items, less one.</summary>
    internal void Shuffle(Span<int> items)
    {
        for (var i = items.Length - 1; i > 0; i--)
        {
            var z = _state += 0x9E3779B97F4A7C15;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            var j = (int)(((z ^ (z >> 31)) >> 11) * (1.0 / (1UL << 53)) * (i + 1));
            (items[i], items[j]) = (items[j], items[i]);
        }
    }
}
