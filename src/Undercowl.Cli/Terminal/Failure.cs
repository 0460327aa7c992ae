using System.Text.Json;
using Undercowl.Cli.Documents;
using Undercowl.Diagnosis;
using Undercowl.Jobs;
using Undercowl.Physics;

namespace Undercowl.Cli;

/// <summary>How refusals reach the user: one message on the error stream, and an exit code.</summary>
internal static class Failure
{
    /// <summary>Runs a command; a refusal is told, under <paramref name="json"/> as a document too.</summary>
    public static int Guard(Shell shell, bool json, Func<int> act)
    {
        try
        {
            return act();
        }
        catch (Exception error) when (error is DiagnosisException or JobException or Refusal or PhysicsRangeException)
        {
            return Refused(shell, json, error.Message, ExitCode.Refused);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return Refused(shell, json, $"{error.Message} Check the name, the permissions and the free space.", ExitCode.Refused);
        }
        catch (JsonException error)
        {
            return Refused(shell, json, $"A document cannot be read: {error.Message}", ExitCode.Refused);
        }
        catch (OperationCanceledException)
        {
            return ExitCode.Interrupted;
        }
    }

    public static int Usage(Shell shell, bool json, string message, string help)
    {
        var code = Refused(shell, json, message, ExitCode.Usage);
        shell.Error.WriteLine($"See: {help}");
        return code;
    }

    private static int Refused(Shell shell, bool json, string message, int code)
    {
        Say(shell, message);
        if (json)
        {
            shell.Out.WriteLine(JsonSerializer.Serialize(new RefusedAnswer(1, message, code), TerminalJson.Default.RefusedAnswer));
            shell.Out.Flush();
        }

        return code;
    }

    public static void Say(Shell shell, string message) => shell.Error.WriteLine($"undercowl: {message}");
}
