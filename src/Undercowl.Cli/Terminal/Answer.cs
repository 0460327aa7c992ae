using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace Undercowl.Cli;

/// <summary>What a command has to say: a document, and the same in words.</summary>
internal abstract class Answer
{
    /// <summary>Writes it to standard output and gives the exit code.</summary>
    public abstract int Show(Shell shell, bool json);

    /// <summary>An answer as a document.</summary>
    /// <param name="document">The document.</param>
    /// <param name="type">How it is written as JSON.</param>
    /// <param name="words">Writes the same as text for people.</param>
    /// <param name="exit">Exit code.</param>
    public static Answer Of<T>(T document, JsonTypeInfo<T> type, Action<T, Page> words, int exit = ExitCode.Good) => new Document<T>(document, type, words, exit);

    /// <summary>An answer of a command that has written as it went.</summary>
    public static Answer Told(Func<bool, int> tell) => new Telling(tell);

    private sealed class Document<T>(T document, JsonTypeInfo<T> type, Action<T, Page> words, int exit) : Answer
    {
        public override int Show(Shell shell, bool json)
        {
            if (json)
            {
                shell.Out.WriteLine(JsonSerializer.Serialize(document, type));
            }
            else
            {
                words(document, new Page(shell));
            }

            shell.Out.Flush();
            return exit;
        }
    }

    private sealed class Telling(Func<bool, int> tell) : Answer
    {
        public override int Show(Shell shell, bool json) => tell(json);
    }
}
