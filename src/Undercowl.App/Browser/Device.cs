using System.Runtime.InteropServices.JavaScript;

namespace Undercowl.App.Browser;

/// <summary>What only the browser can do: files, sharing, theme, printing; <c>js/device.js</c>.</summary>
internal static partial class Device
{
    private const string Module = "device";

    public static Task Import() => JSHost.ImportAsync(Module, "../js/device.js");

    [JSImport("theme", Module)]
    public static partial void Theme(string name);

    [JSImport("themeKept", Module)]
    public static partial string ThemeKept();

    /// <summary>What was half typed when the page was left; empty when nothing was.</summary>
    [JSImport("draft", Module)]
    public static partial string Draft(string key);

    [JSImport("keepDraft", Module)]
    public static partial void KeepDraft(string key, string text);

    [JSImport("save", Module)]
    public static partial void Save(string name, string type, string text);

    [JSImport("canShare", Module)]
    public static partial bool CanShare();

    [JSImport("share", Module)]
    public static partial Task<bool> Share(string name, string text);

    /// <summary>The text of the files that the user chooses, joined by line feeds; empty when none.</summary>
    [JSImport("choose", Module)]
    public static partial Task<string> Choose(string accept);

    [JSImport("print", Module)]
    public static partial void Print();

    [JSImport("deviceName", Module)]
    public static partial string DeviceName();
}
