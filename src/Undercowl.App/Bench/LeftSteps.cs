using Undercowl.Diagnosis.Answers;

namespace Undercowl.App.Bench;

/// <summary>Steps that the technician left for now, as text that page and worker share: one a line. They are of the device, not of the job.</summary>
public sealed class LeftSteps
{
    private readonly HashSet<string> _left;

    private LeftSteps(IEnumerable<string> left) => _left = [.. left];

    public string Text => string.Join('\n', _left.Order(StringComparer.Ordinal));

    public int Count => _left.Count;

    public static LeftSteps Parse(string text) => new(text.Split('\n', StringSplitOptions.RemoveEmptyEntries));

    public bool Contains(ProposedStep step) => _left.Contains(Key(step));

    public void Add(ProposedStep step) => _left.Add(Key(step));

    public void Clear() => _left.Clear();

    private static string Key(ProposedStep step) => $"{step.Kind} {step.Id} {step.Place} {step.With}";
}
