namespace Undercowl.Cli;

/// <summary>Emphasis on a terminal that can show it; plain text anywhere else. Nothing is said by colour alone.</summary>
internal readonly record struct Paint(bool On)
{
    public string Strong(string text) => Wrap("1", text);

    public string Quiet(string text) => Wrap("2", text);

    public string Caution(string text) => Wrap("1;33", text);

    public string Good(string text) => Wrap("1;32", text);

    private string Wrap(string code, string text) => On ? $"\e[{code}m{text}\e[0m" : text;
}
