namespace Undercowl.Cli;

/// <summary>What the program returns to the shell; documented in docs/terminal.md.</summary>
internal static class ExitCode
{
    public const int Good = 0;

    /// <summary>Refused, or something is wrong with a file or an answer.</summary>
    public const int Refused = 1;

    /// <summary>The command line itself cannot be understood.</summary>
    public const int Usage = 2;

    /// <summary>Stopped by Ctrl-C, as shells report it.</summary>
    public const int Interrupted = 130;
}
