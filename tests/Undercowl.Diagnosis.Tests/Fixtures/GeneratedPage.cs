using Xunit;

namespace Undercowl.Diagnosis.Tests.Fixtures;

/// <summary>A page of docs/ that tests work out. With UNDERCOWL_WRITE_PAGES set it is written afresh instead of being compared.</summary>
internal static class GeneratedPage
{
    /// <param name="path">From the repository's root.</param>
    /// <param name="page">What it must be.</param>
    public static void Check(string path, string page)
    {
        if (Environment.GetEnvironmentVariable("UNDERCOWL_WRITE_PAGES") is { Length: > 0 })
        {
            File.WriteAllText(Repository.PathOf(path), page);
        }
        else
        {
            Assert.Equal(page, Repository.Read(path));
        }
    }
}
