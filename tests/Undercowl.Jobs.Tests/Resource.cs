namespace Undercowl.Jobs.Tests;

/// <summary>Files of the repository that were built into the tests.</summary>
internal static class Resource
{
    public static string Text(string name)
    {
        using var stream = typeof(Resource).Assembly.GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }

    public static string[] Lines(string name) => Text(name).TrimEnd('\n').Split('\n');
}
