using System.Text.RegularExpressions;
using Undercowl.BrowserTests.Fixtures;

namespace Undercowl.BrowserTests;

/// <summary>What a phone downloads, as the host sends it: compressed with brotli.</summary>
public sealed partial class DownloadTests
{
    /// <summary>Bytes; the ratchet. It may only go down, or up with a reason beside it. The limit is 3,000,000.</summary>
    private const long Most = 2_750_000;

    [Fact]
    public void The_download_is_no_larger_than_it_was()
    {
        var files = Directory.EnumerateFiles(Path.Combine(Served.Folder, "wwwroot"), "*.br", SearchOption.AllDirectories).ToArray();
        Assert.True(files.Length > 50, "The published program is not there.");
        var bytes = files.Sum(f => new FileInfo(f).Length);
        Assert.True(bytes <= Most, $"The download is {bytes} bytes, more than {Most}.");
    }

    /// <summary>A host that publishes the client through a project reference can leave both out without a word.</summary>
    [Fact]
    public void The_page_is_filled_in_and_is_kept_for_use_without_a_network()
    {
        var page = File.ReadAllText(Path.Combine(Served.Folder, "wwwroot/index.html"));
        Assert.DoesNotContain("{fingerprint}", page, StringComparison.Ordinal);
        Assert.DoesNotContain("importmap", page, StringComparison.Ordinal);
        var kept = File.ReadAllText(Path.Combine(Served.Folder, "wwwroot/service-worker-assets.js"));
        foreach (Match named in Named().Matches(page))
        {
            Assert.Contains($"\"url\": \"{named.Groups[1].Value}\"", kept, StringComparison.Ordinal);
        }

        Assert.Contains("\"url\": \"index.html\"", kept, StringComparison.Ordinal);
        Assert.Contains("\"url\": \"js/bench-worker.js\"", kept, StringComparison.Ordinal);
    }

    [GeneratedRegex("(?:src|href)=\"([^\"/.][^\"]*)\"")]
    private static partial Regex Named();
}
