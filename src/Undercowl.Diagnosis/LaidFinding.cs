using Undercowl.Diagnosis.Graph;
using Undercowl.Diagnosis.Readings;
using Undercowl.Jobs;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis;

/// <summary>A finding laid over the network: which node it tells about, and in which company it errs.</summary>
/// <param name="Finding">The finding and what was done before it.</param>
/// <param name="Check">Its check, as known today.</param>
/// <param name="Signal">The quantity, aspect or tool read, in the finding's own set-up.</param>
/// <param name="Levels">The levels' names.</param>
/// <param name="Tool">Node of the tool's own condition, or -1.</param>
/// <param name="ToolReadsWorst">Tool state to whether readings come out as if all were lost.</param>
/// <param name="Doubt">How far the hand is doubted.</param>
/// <param name="Kilovolts">For gap readings.</param>
/// <param name="Reading">The reading with its circumstances.</param>
internal sealed record LaidFinding(
    FindingInContext Finding,
    Check Check,
    Signal Signal,
    IReadOnlyList<string> Levels,
    int Tool,
    bool[] ToolReadsWorst,
    double Doubt,
    IReadOnlyList<double?>? Kilovolts,
    TakenReading Reading)
{
    public string Label => Finding.Id.ToString();

    /// <summary>Readings with an equal key err together. Who tells what another saw is another hand.</summary>
    public (string Check, string Place, string Tool, string Hand, bool Hearsay, int Node, string Map) Company => (
        Check.Id,
        Finding.Body.Place.Text + "/" + Finding.Body.Output,
        Finding.Body.Tool ?? "",
        Finding.Body.Hand,
        Finding.Body.Hearsay,
        Signal.Node,
        string.Join(',', Signal.Map));
}
