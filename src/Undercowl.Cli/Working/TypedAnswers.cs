using Undercowl.Diagnosis;
using Undercowl.Diagnosis.Answers;

namespace Undercowl.Cli;

/// <summary>Answers typed, or given line by line. It prompts only when a person sits there.</summary>
internal sealed class TypedAnswers(Shell shell) : IAnswers
{
    public bool StopsWhenRefused => !shell.Prompts;

    public string? Answer(ProposedStep step, bool cautions, JobDiagnosis diagnosis)
    {
        if (shell.Prompts)
        {
            shell.Out.Flush();
            shell.Error.Write(cautions ? "Read the cautions; then type ok> " : "> ");
        }

        string? line;
        do
        {
            line = shell.In.ReadLine();
        }
        while (line is not null && line.AsSpan().Trim().IsEmpty && !shell.Prompts);
        return line?.Trim();
    }
}
