using Undercowl.Cli.Documents;

namespace Undercowl.Cli.Commands;

internal static class LayoutsCommand
{
    public const string Summary = "List the engine layouts, and the complaints that each may come with.";

    public static Verb Build(Shell shell) => new Verb(shell, "layouts", Summary, "undercowl layouts", "undercowl layouts --json").Does(_ =>
    {
        var known = shell.Knowledge.Known;
        LayoutItem[] layouts = [.. known.Layouts.Where(l => !l.TestOnly).Select(l => new LayoutItem(
            l.Id, l.Name, l.Cylinders, l.Attributes, [.. known.Complaints.Where(c => c.Only.Holds(l)).Select(c => new NamedItem(c.Id, c.Name))]))];
        return Answer.Of(new LayoutsAnswer(1, layouts), TerminalJson.Default.LayoutsAnswer, Write);
    });

    private static void Write(LayoutsAnswer answer, Page page)
    {
        foreach (var layout in answer.Layouts)
        {
            page.Line(page.Paint.Strong(layout.Id));
            page.Item("  ", $"{layout.Name}. {string.Join(", ", layout.Attributes.Select(a => $"{a.Key} {a.Value}"))}");
            page.Table([.. layout.Complaints.Select(c => new[] { "    " + c.Id, c.Name })]);
        }
    }
}
