using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace Undercowl.AppTimes;

/// <summary>A published program's own host, on a port of its own.</summary>
internal sealed class Host : IDisposable
{
    private readonly Process _process;

    public Host(string program)
    {
        using (var listener = new TcpListener(IPAddress.Loopback, 0))
        {
            listener.Start();
            Address = $"http://localhost:{((IPEndPoint)listener.LocalEndpoint).Port}";
        }

        _process = Process.Start(new ProcessStartInfo("dotnet", [program])
        {
            WorkingDirectory = Path.GetDirectoryName(program),
            Environment = { ["ASPNETCORE_URLS"] = Address, ["Logging__LogLevel__Default"] = "Warning" },
        })!;
        using var client = new HttpClient();
        for (var tries = 0; ; tries++)
        {
            try
            {
                client.GetAsync(new Uri(Address)).GetAwaiter().GetResult().EnsureSuccessStatusCode();
                return;
            }
            catch (HttpRequestException) when (tries < 300)
            {
                Thread.Sleep(100);
            }
        }
    }

    public string Address { get; }

    public void Dispose()
    {
        _process.Kill(entireProcessTree: true);
        _process.WaitForExit();
        _process.Dispose();
    }
}
