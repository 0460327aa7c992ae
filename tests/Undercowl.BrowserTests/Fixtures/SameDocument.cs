using System.Globalization;
using System.Text.Json;

namespace Undercowl.BrowserTests.Fixtures;

/// <summary>Two answer documents that say the same.</summary>
internal static class SameDocument
{
    /// <summary>Sums are made in the same order inside and outside the browser, but not by the same instructions.</summary>
    private const double Tolerance = 1e-9;

    public static void Assert(JsonElement native, JsonElement browser) => Same(native, browser, "");

    /// <summary>Every member alike, numbers to 1e-9; only what the caution of a step says of having been read may differ, which no answer waits for.</summary>
    private static void Same(JsonElement native, JsonElement browser, string at)
    {
        Xunit.Assert.Equal(native.ValueKind, browser.ValueKind);
        switch (native.ValueKind)
        {
            case JsonValueKind.Object:
                var mine = native.EnumerateObject().Where(p => Compared(at, p.Name)).ToDictionary(p => p.Name, p => p.Value);
                var theirs = browser.EnumerateObject().Where(p => Compared(at, p.Name)).ToDictionary(p => p.Name, p => p.Value);
                Xunit.Assert.Equal(mine.Keys.Order(StringComparer.Ordinal), theirs.Keys.Order(StringComparer.Ordinal));
                foreach (var (name, value) in mine)
                {
                    Same(value, theirs[name], $"{at}/{name}");
                }

                break;
            case JsonValueKind.Array:
                Xunit.Assert.Equal(native.GetArrayLength(), browser.GetArrayLength());
                foreach (var (i, value) in native.EnumerateArray().Index())
                {
                    Same(value, browser[i], $"{at}/{i.ToString(CultureInfo.InvariantCulture)}");
                }

                break;
            case JsonValueKind.Number:
                Xunit.Assert.True(Math.Abs(native.GetDouble() - browser.GetDouble()) <= Tolerance * Math.Max(1, Math.Abs(native.GetDouble())), $"{at}: {native} and {browser}");
                break;
            default:
                Xunit.Assert.True(native.ToString() == browser.ToString(), $"{at}: \"{native}\" and \"{browser}\"");
                break;
        }
    }

    private static bool Compared(string at, string name) => name is not "acknowledged" && (at.Length > 0 || name is not "entries");
}
