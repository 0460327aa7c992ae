using System.Security.Cryptography;
using Undercowl.Jobs;

namespace Undercowl.Cli;

/// <summary>
/// All that a command sees of the world outside: streams, environment, clock, chance and the folder with the knowledge.
/// Tests pass their own.
/// </summary>
internal sealed class Shell
{
    /// <summary>What prints well; taken where there is no terminal.</summary>
    private const int UsualWidth = 78;

    private const int LeastWidth = 32;
    private const int MostWidth = 100;

    private KnowledgeAtHand? _knowledge;

    public required TextReader In { get; init; }

    /// <summary>For data: what was asked for.</summary>
    public required TextWriter Out { get; init; }

    /// <summary>For messages: warnings, notices, refusals, prompts.</summary>
    public required TextWriter Error { get; init; }

    /// <summary>True when a person sits at both ends, so that prompts make sense.</summary>
    public bool Prompts { get; init; }

    /// <summary>True when standard output may be coloured.</summary>
    public bool Colour { get; init; }

    /// <summary>How many columns text for people may take.</summary>
    public int Width { get; init; } = UsualWidth;

    public required Func<string, string?> Variable { get; init; }

    public TimeProvider Clock { get; init; } = TimeProvider.System;

    public RandomFill Random { get; init; } = RandomNumberGenerator.Fill;

    /// <summary>Where <c>knowledge.json</c> and <c>demo/</c> lie.</summary>
    public string Folder { get; init; } = AppContext.BaseDirectory;

    /// <summary>The knowledge, read when first asked for.</summary>
    public KnowledgeAtHand Knowledge => _knowledge ??= KnowledgeAtHand.Of(this);

    /// <summary>The name that entries are recorded under: the environment's, else the machine's, made to fit.</summary>
    public string Device
    {
        get
        {
            var name = Variable("UNDERCOWL_DEVICE") is { Length: > 0 } given ? given : Environment.MachineName;
            var fit = new string([.. name.Where(c => !char.IsControl(c)).Take(64)]).Trim();
            return fit.Length == 0 ? "terminal" : fit;
        }
    }

    public Paint Paint => new(Colour);

    public static Shell OfProcess() => new()
    {
        In = Console.In,
        Out = Console.Out,
        Error = Console.Error,
        Prompts = !Console.IsInputRedirected && !Console.IsOutputRedirected,
        Colour = !Console.IsOutputRedirected && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR")) && Environment.GetEnvironmentVariable("TERM") is not "dumb",
        Width = WidthOfProcess(),
        Variable = Environment.GetEnvironmentVariable,
    };

    /// <summary>The terminal's width, or what <c>COLUMNS</c> says, within what can be read.</summary>
    private static int WidthOfProcess()
    {
        var said = int.TryParse(Environment.GetEnvironmentVariable("COLUMNS"), out var columns) ? columns
            : Console.IsOutputRedirected ? UsualWidth : Console.WindowWidth;
        return said <= 0 ? UsualWidth : Math.Clamp(said, LeastWidth, MostWidth);
    }
}
