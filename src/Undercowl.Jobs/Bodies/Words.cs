using System.Text;

namespace Undercowl.Jobs;

/// <summary>
/// How the members of an enumeration are written in an entry: <c>InPart</c> as <c>in-part</c>. The sets are closed for
/// good: what a later version wants to add becomes a new member or kind, which older versions keep as unknown.
/// </summary>
internal static class Words
{
    public static string Of<T>(T value)
        where T : struct, Enum => Written<T>.All[Array.IndexOf(Written<T>.Values, value)];

    public static IReadOnlyList<string> All<T>()
        where T : struct, Enum => Written<T>.All;

    public static bool TryRead<T>(string text, out T value)
        where T : struct, Enum
    {
        var at = Array.IndexOf(Written<T>.All, text);
        value = at < 0 ? default : Written<T>.Values[at];
        return at >= 0;
    }

    private static string Hyphened(string name)
    {
        var text = new StringBuilder();
        foreach (var c in name)
        {
            if (char.IsAsciiLetterUpper(c) && text.Length > 0)
                text.Append('-');
            text.Append(char.ToLowerInvariant(c));
        }

        return text.ToString();
    }

    private static class Written<T>
        where T : struct, Enum
    {
        public static readonly T[] Values = Enum.GetValues<T>();
        public static readonly string[] All = Array.ConvertAll(Values, value => Hyphened(value.ToString()));
    }
}
