namespace Undercowl.Cli;

/// <summary>Text for people on standard output, broken at the shell's width.</summary>
internal sealed class Page(Shell shell)
{
    /// <summary>Where less than this is left beside what leads a paragraph, the paragraph begins on a line of its own.</summary>
    private const int LeastBeside = 24;

    private const string Below = "    ";

    public int Width { get; } = shell.Width;

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
        if (lead.Trim().Length > 0 && Width - lead.Length < LeastBeside)
        {
            Line(lead.TrimEnd());
            lead = Below;
        }

        var indent = new string(' ', lead.Length);
        var first = true;
        foreach (var line in Broken(text, Width - lead.Length))
        {
            Line(((first ? lead : indent) + line).TrimEnd());
            first = false;
        }
    }

    /// <summary>What stands above all that the program says; at the end of every sheet.</summary>
    public void Prevail() => Item("", Paint.Quiet("The engine maker's manual, local rules and licensed practice prevail."));

    public void Items(string lead, IEnumerable<string> texts)
    {
        foreach (var text in texts)
        {
            Item(lead, text);
        }
    }

    /// <summary>Rows in columns, each as wide as its widest cell but the last, which takes what is left.</summary>
    public void Table(IReadOnlyList<string[]> rows)
    {
        if (rows.Count == 0)
        {
            return;
        }

        var widths = Enumerable.Range(0, rows[0].Length).Select(c => rows.Max(r => r[c].Length)).ToArray();
        foreach (var row in rows)
        {
            Item(string.Concat(row.Take(row.Length - 1).Select((cell, c) => cell.PadRight(widths[c]) + "  ")), row[^1]);
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
