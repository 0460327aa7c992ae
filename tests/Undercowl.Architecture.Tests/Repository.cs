namespace Undercowl.Architecture.Tests;

/// <summary>Finds the repository from where the tests run.</summary>
internal static class Repository
{
    public static string Root { get; } = Find(AppContext.BaseDirectory);

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
