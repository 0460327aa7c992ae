using System.Runtime.InteropServices.JavaScript;

namespace Undercowl.App.Browser;

/// <summary>The page's side of the worker in which belief and planner run; <c>js/bench.js</c>.</summary>
internal static partial class BenchWorker
{
    private const string Module = "bench";

    public static Task Import() => JSHost.ImportAsync(Module, "../js/bench.js");

    /// <summary>Starts the worker, so that the first question need not wait for it.</summary>
    [JSImport("wake", Module)]
    public static partial void Wake();

    /// <summary>Puts a question about a job; empty when a newer one of its kind overtook it.</summary>
    [JSImport("ask", Module)]
    public static partial Task<string> Ask(string kind, string lines, string argument);
}
