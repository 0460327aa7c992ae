using System.CommandLine;
using Undercowl.Cli.Documents;
using Undercowl.Diagnosis;
using Undercowl.Jobs;

namespace Undercowl.Cli.Commands;

internal static class ToolsCommand
{
    public const string Summary = "Record which tools are at hand and which are not, or list them.";

    public static Verb Build(Shell shell)
    {
        var job = CommonArguments.Job();
        var have = new Option<string[]>("--have") { HelpName = "TOOL…", Description = "At hand.", AllowMultipleArgumentsPerToken = true };
        var lack = new Option<string[]>("--lack") { HelpName = "TOOL…", Description = "Not to be had here; checks that need it are not proposed.", AllowMultipleArgumentsPerToken = true };
        return new Verb(shell, "tools", Summary, "undercowl tools boat7.jsonl", "undercowl tools boat7.jsonl --have TOOL TOOL --lack TOOL").Takes(job, have, lack).Does(parsed =>
        {
            var path = parsed.GetRequiredValue(job);
            string[] with = parsed.GetValue(have) ?? [], without = parsed.GetValue(lack) ?? [];
            if (with.Length + without.Length == 0)
            {
                return List(shell, path);
            }

            var known = shell.Knowledge.Known.Tools.Select(t => t.Id).ToArray();
            foreach (var tool in with.Concat(without).Where(t => !known.Contains(t)))
            {
                throw new DiagnosisException($"There is no tool \"{tool}\".", Near.Mend(tool, known));
            }

            return Recording.Of(shell, path, _ => new Tools(with, without));
        });
    }

    private static Answer List(Shell shell, string path)
    {
        using var at = JobAtHand.Read(shell, path);
        var said = Projection.Of(at.Job).Tools;
        ToolItem[] tools = [.. shell.Knowledge.Known.Tools.Select(t => new ToolItem(t.Id, t.Name, said.TryGetValue(t.Id, out var have) ? have : null))];
        return Answer.Of(new ToolsAnswer(1, tools), TerminalJson.Default.ToolsAnswer, (answer, page) =>
            page.Table([.. answer.Tools.Select(t => new[] { t.Id, t.AtHand switch { true => "at hand", false => "lacking", _ => "not said" }, t.Name })]));
    }
}
