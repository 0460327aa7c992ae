namespace Undercowl.Cli.Commands;

/// <summary>The commands by name, in the order in which a job meets them. Each is built only when it is asked for.</summary>
internal static class AllCommands
{
    public static IReadOnlyList<CommandEntry> All { get; } =
    [
        new("layouts", LayoutsCommand.Summary, LayoutsCommand.Build),
        new("checks", ChecksCommand.Summary, ChecksCommand.Build),
        new("remedies", RemediesCommand.Summary, RemediesCommand.Build),
        new("start", StartCommand.Summary, StartCommand.Build),
        new("intake", IntakeCommand.Summary, IntakeCommand.Build),
        new("ambient", AmbientCommand.Summary, AmbientCommand.Build),
        new("specs", SpecsCommand.Summary, SpecsCommand.Build),
        new("tools", ToolsCommand.Summary, ToolsCommand.Build),
        new("rate", RateCommand.Summary, RateCommand.Build),
        new("work", WorkCommand.Summary, WorkCommand.Build),
        new("next", NextCommand.Summary, NextCommand.Build),
        new("record", RecordCommand.Summary, RecordCommand.Build),
        new("belief", BeliefCommand.Summary, BeliefCommand.Build),
        new("answer", AnswerCommand.Summary, AnswerCommand.Build),
        new("why", WhyCommand.Summary, WhyCommand.Build),
        new("sensitivity", SensitivityCommand.Summary, SensitivityCommand.Build),
        new("swap", SwapCommand.Summary, SwapCommand.Build),
        new("remedy", RemedyCommand.Summary, RemedyCommand.Build),
        new("result", ResultCommand.Summary, ResultCommand.Build),
        new("set-up", SetUpCommand.Summary, SetUpCommand.Build),
        new("restore", RestoreCommand.Summary, RestoreCommand.Build),
        new("ventilate", VentilateCommand.Summary, VentilateCommand.Build),
        new("acknowledge", AcknowledgeCommand.Summary, AcknowledgeCommand.Build),
        new("decline", DeclineCommand.Summary, DeclineCommand.Build),
        new("note", NoteCommand.Summary, NoteCommand.Build),
        new("withdraw", WithdrawCommand.Summary, WithdrawCommand.Build),
        new("report", ReportCommand.Summary, ReportCommand.Build),
        new("merge", MergeCommand.Summary, MergeCommand.Build),
        new("sign-off", SignOffCommand.Summary, SignOffCommand.Build),
        new("network", NetworkCommand.Summary, NetworkCommand.Build),
        new("knowledge", KnowledgeCommand.Summary, KnowledgeCommand.Build),
        new("demo", DemoCommand.Summary, DemoCommand.Build),
    ];

    public static IEnumerable<string> Names => All.Select(c => c.Name);

    public static CommandEntry? Find(string name) => All.FirstOrDefault(c => c.Name == name);
}

/// <summary>A command that can be built.</summary>
internal sealed record CommandEntry(string Name, string Summary, Func<Shell, Verb> Build);
