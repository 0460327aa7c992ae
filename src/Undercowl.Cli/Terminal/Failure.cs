using System.Text.Json;
using Undercowl.Diagnosis;
using Undercowl.Jobs;
using Undercowl.Physics;

namespace Undercowl.Cli;

/// <summary>How refusals reach the user: one message on the error stream, and an exit code.</summary>
internal static class Failure
{
    public static int Guard(Shell shell, Func<int> act)
    {
        try
        {
            return act();
        }
        catch (Exception error) when (error is DiagnosisException or JobException or Refusal or PhysicsRangeException)
        {
            Say(shell, error.Message);
            return ExitCode.Refused;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            Say(shell, $"{error.Message} Check the name, the permissions and the free space.");
            return ExitCode.Refused;
        }
        catch (JsonException error)
        {
            Say(shell, $"A document cannot be read: {error.Message}");
            return ExitCode.Refused;
        }
        catch (OperationCanceledException)
        {
            return ExitCode.Interrupted;
        }
    }

    public static int Usage(Shell shell, string message, string help)
    {
        Say(shell, message);
        shell.Error.WriteLine($"See: {help}");
        return ExitCode.Usage;
    }

    public static void Say(Shell shell, string message) => shell.Error.WriteLine($"undercowl: {message}");
}
