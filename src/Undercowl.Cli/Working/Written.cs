using System.Text;

namespace Undercowl.Cli;

/// <summary>Text written to a file as a whole: beside it first, then in its place, so that a stop leaves the old one or the new one.</summary>
internal static class Written
{
    public static void Whole(string path, string text)
    {
        var beside = path + ".new";
        try
        {
            File.WriteAllText(beside, text, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
            File.Move(beside, path, overwrite: true);
        }
        catch
        {
            File.Delete(beside);
            throw;
        }
    }
}
