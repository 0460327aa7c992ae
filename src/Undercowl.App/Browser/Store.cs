using System.Runtime.InteropServices.JavaScript;

namespace Undercowl.App.Browser;

/// <summary>Jobs in the browser's own store; <c>js/store.js</c>. A task that ends well means: on the disk.</summary>
internal static partial class Store
{
    private const string Module = "store";

    public static Task Import() => JSHost.ImportAsync(Module, "../js/store.js");

    /// <summary>Entries of a job, and its head, in one deed.</summary>
    [JSImport("append", Module)]
    public static partial Task Append(string head, string lines);

    [JSImport("jobs", Module)]
    public static partial Task<string> Jobs();

    /// <summary>One head, or <c>null</c> as text.</summary>
    [JSImport("head", Module)]
    public static partial Task<string> Head(string id);

    [JSImport("lines", Module)]
    public static partial Task<string> Lines(string id);

    [JSImport("keep", Module)]
    public static partial Task Keep(string head);

    [JSImport("erase", Module)]
    public static partial Task Erase(string id);

    [JSImport("keepAnswer", Module)]
    public static partial Task KeepAnswer(string id, string key, string text);

    /// <summary>The key and, after a line feed, the answer kept under it; empty when none is.</summary>
    [JSImport("answer", Module)]
    public static partial Task<string> Answer(string id);

    [JSImport("setting", Module)]
    public static partial Task<string> Setting(string key);

    [JSImport("set", Module)]
    public static partial Task Set(string key, string value);

    [JSImport("persist", Module)]
    public static partial Task<bool> Persist();
}
