namespace Undercowl.Tests;

/// <summary>Where the repository lies, found from the tests' own folder upwards. Shared by the test projects that read its files where they stand.</summary>
internal static class Repository
{
    public static string Root { get; } = Find(AppContext.BaseDirectory);

    public static string PathOf(string path) => Path.Combine(Root, path);

    public static string Read(string path) => File.ReadAllText(PathOf(path));

    private static string Find(string from)
    {
        for (var folder = new DirectoryInfo(from); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Undercowl.slnx")))
            {
                return folder.FullName;
            }
        }

        throw new DirectoryNotFoundException("Undercowl.slnx was not found above the tests.");
    }
}
