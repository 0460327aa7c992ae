using System.Reflection;

namespace Undercowl.Knowledge.Tests.Fixtures;

/// <summary>Files of the repository, at the path that the build wrote into the tests.</summary>
internal static class Repository
{
    private static readonly string Root = typeof(Repository).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().Single(a => a.Key == "repository").Value!;

    public static string File(string path) => Path.Combine(Root, path);
}
