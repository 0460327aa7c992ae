using Undercowl.Jobs;

namespace Undercowl.Diagnosis.Working;

/// <summary>The endings of a job as they are typed and printed.</summary>
public static class Outcomes
{
    private static readonly (JobOutcome Outcome, string Text)[] Known =
    [
        (JobOutcome.Proven, "proven"),
        (JobOutcome.Unproven, "unproven"),
        (JobOutcome.Referred, "referred"),
        (JobOutcome.Declined, "declined"),
        (JobOutcome.GetHome, "get-home"),
        (JobOutcome.Uneconomic, "uneconomic"),
        (JobOutcome.NoFaultFound, "no-fault-found"),
    ];

    public static string Text(JobOutcome outcome) => Known.First(k => k.Outcome == outcome).Text;

    public static JobOutcome Parse(string text)
    {
        foreach (var (outcome, known) in Known)
        {
            if (known == text)
            {
                return outcome;
            }
        }

        throw new DiagnosisException($"There is no ending \"{text}\".", Near.Mend(text, Known.Select(k => k.Text)));
    }
}
