using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace Undercowl.BrowserTests.Fixtures;

/// <summary>The published program, served by its own host on a port of its own until disposed or killed.</summary>
internal sealed class Served : IAsyncDisposable
{
    private readonly Process _host;

    private Served(Process host, string address) => (_host, Address) = (host, address);

    public string Address { get; }

    /// <summary>Where ./test puts the published program.</summary>
    public static string Folder => Repository.PathOf("artifacts/app");

    public static async Task<Served> Start()
    {
        var program = Path.Combine(Folder, "Undercowl.Server.dll");
        Assert.True(File.Exists(program), $"{program} is not there: ./run --publish makes it, and ./test calls that.");
        var address = $"http://localhost:{FreePort()}";
        var host = Process.Start(new ProcessStartInfo("dotnet", [program])
        {
            WorkingDirectory = Folder,
            Environment = { ["ASPNETCORE_URLS"] = address, ["Logging__LogLevel__Default"] = "Warning" },
        })!;
        using var client = new HttpClient();
        for (var tries = 0; ; tries++)
        {
            try
            {
                (await client.GetAsync(new Uri(address))).EnsureSuccessStatusCode();
                return new Served(host, address);
            }
            catch (HttpRequestException) when (tries < 300 && !host.HasExited)
            {
                await Task.Delay(100);
            }
        }
    }

    /// <summary>As the power going: no goodbye.</summary>
    public async Task Kill()
    {
        _host.Kill(entireProcessTree: true);
        await _host.WaitForExitAsync();
    }

    public async ValueTask DisposeAsync()
    {
        if (!_host.HasExited)
        {
            await Kill();
        }

        _host.Dispose();
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
