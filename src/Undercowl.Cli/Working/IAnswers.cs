using Undercowl.Diagnosis;
using Undercowl.Diagnosis.Answers;

namespace Undercowl.Cli;

/// <summary>Who answers while a job is worked: a person at the terminal, a file of lines, or the demonstration.</summary>
internal interface IAnswers
{
    /// <summary>True when a refused answer ends the work, because the answers after it would be taken for other questions.</summary>
    bool StopsWhenRefused { get; }

    /// <summary>The answer; null when there are no more.</summary>
    /// <param name="step">The step that is put.</param>
    /// <param name="cautions">True while its cautions are to be acknowledged, before anything else.</param>
    /// <param name="diagnosis">The job as it is.</param>
    string? Answer(ProposedStep step, bool cautions, JobDiagnosis diagnosis);
}
