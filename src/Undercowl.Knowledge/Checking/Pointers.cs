using System.Globalization;

namespace Undercowl.Knowledge.Checking;

/// <summary>Puts JSON Pointers (RFC 6901) together and takes them apart.</summary>
public static class Pointers
{
    public static string Member(this string path, string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return $"{path}/{name.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal)}";
    }

    public static string Entry(this string path, int index) => string.Create(CultureInfo.InvariantCulture, $"{path}/{index}");

    /// <summary>The last part as it was named; "the file" for the empty pointer, "entry 3" for the third of a list.</summary>
    public static string Last(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        var name = path[(path.LastIndexOf('/') + 1)..].Replace("~1", "/", StringComparison.Ordinal).Replace("~0", "~", StringComparison.Ordinal);
        return name.Length == 0 ? "the file"
            : int.TryParse(name, NumberStyles.None, CultureInfo.InvariantCulture, out var index) ? string.Create(CultureInfo.InvariantCulture, $"entry {index + 1}")
            : name;
    }
}
