namespace Undercowl.Cli;

/// <summary>Text for people on standard output, broken at 78 columns so that it prints well.</summary>
internal sealed class Page(Shell shell)
{
    public const int Width = 78;

    public Paint Paint { get; } = shell.Paint;

    public void Line(string text = "") => shell.Out.WriteLine(text);

    /// <summary>A heading, set off by a blank line.</summary>
    public void Heading(string text)
    {
        Line();
        Line(Paint.Strong(text));
    }

    /// <summary>A paragraph; its later lines are indented under its first.</summary>
    /// <param name="lead">What stands before the text, such as a number or a dash.</param>
    /// <param name="text">The text.</param>
    public void Item(string lead, string text)
    {
        var indent = new string(' ', lead.Length);
        var first = true;
        foreach (var line in Broken(text, Width - lead.Length))
        {
            Line((first ? lead : indent) + line);
            first = false;
        }
    }

    public void Items(string lead, IEnumerable<string> texts)
    {
        foreach (var text in texts)
        {
            Item(lead, text);
        }
    }

    /// <summary>Rows in columns, each as wide as its widest cell but the last, which runs on.</summary>
    public void Table(IReadOnlyList<string[]> rows)
    {
        if (rows.Count == 0)
        {
            return;
        }

        var widths = Enumerable.Range(0, rows[0].Length).Select(c => rows.Max(r => r[c].Length)).ToArray();
        foreach (var row in rows)
        {
            Line(string.Join("  ", row.Select((cell, c) => c == row.Length - 1 ? cell : cell.PadRight(widths[c]))).TrimEnd());
        }
    }

    internal static IEnumerable<string> Broken(string text, int width)
    {
        foreach (var paragraph in text.ReplaceLineEndings("\n").Split('\n'))
        {
            var line = "";
            foreach (var word in paragraph.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            {
                if (line.Length > 0 && line.Length + 1 + word.Length > width)
                {
                    yield return line;
                    line = "";
                }

                line = line.Length == 0 ? word : $"{line} {word}";
            }

            yield return line;
        }
    }
}
