namespace Undercowl.Cli;

/// <summary>While one is held, Ctrl-C is noted and not obeyed; when it is let go, the program stops if it was asked to.</summary>
internal sealed class Uninterrupted : IDisposable
{
    private bool _asked;

    public Uninterrupted() => Console.CancelKeyPress += Note;

    public void Dispose()
    {
        Console.CancelKeyPress -= Note;
        if (_asked)
        {
            throw new OperationCanceledException();
        }
    }

    private void Note(object? sender, ConsoleCancelEventArgs asked)
    {
        asked.Cancel = true;
        _asked = true;
    }
}
