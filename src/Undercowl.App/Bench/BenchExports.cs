using System.Runtime.InteropServices.JavaScript;
using System.Text;
using System.Text.Json;
using Undercowl.Diagnosis;
using Undercowl.Diagnosis.Answers;
using Undercowl.Jobs;

namespace Undercowl.App.Bench;

/// <summary>What the worker is asked: the lines of a job in, an answer document out. One job is kept open, the last.</summary>
internal static partial class BenchExports
{
    private static (string Lines, JobDiagnosis Diagnosis)? _open;

    [JSExport]
    internal static void Warm() => _ = Known.Bench;

    /// <param name="kind">answer, belief, why or report.</param>
    /// <param name="lines">The job's entries.</param>
    /// <param name="argument">For answer: the steps left for now, a line each. For why: the cause.</param>
    [JSExport]
    internal static string Ask(string kind, string lines, string argument)
    {
        var diagnosis = Open(lines);
        return kind switch
        {
            "answer" => JsonSerializer.Serialize(diagnosis.Answer(JobAnswer.Proposals, LeftSteps.Parse(argument).Contains), AnswerJson.Default.JobAnswer),
            "belief" => JsonSerializer.Serialize(diagnosis.BeliefNow(), AnswerJson.Default.BeliefAnswer),
            "why" => JsonSerializer.Serialize(diagnosis.Why(argument), AnswerJson.Default.WhyAnswer),
            "report" => JsonSerializer.Serialize(diagnosis.Report(), AnswerJson.Default.ReportAnswer),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Ask for answer, belief, why or report."),
        };
    }

    private static JobDiagnosis Open(string lines)
    {
        if (_open is not { } open || open.Lines != lines)
        {
            _open = open = (lines, Known.Bench.Open(Job.Parse(Encoding.UTF8.GetBytes(lines)).Whole()));
        }

        return open.Diagnosis;
    }
}
