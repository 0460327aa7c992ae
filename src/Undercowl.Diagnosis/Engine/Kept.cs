using System.Collections.Concurrent;
using Undercowl.Diagnosis.Planning;
using Undercowl.Diagnosis.Readings;

namespace Undercowl.Diagnosis.Engine;

/// <summary>
/// What a next step needs of an engine whatever was found: the set-ups of its checks as it stands, and what their outcomes would be.
/// Kept from one step to the next and from job to job, on several threads; forgotten when it becomes much.
/// </summary>
internal sealed class Kept
{
    /// <summary>So many ways of standing are kept. Estimate: far more than a job has.</summary>
    private const int MostStandings = 64;

    /// <summary>So many tables of outcomes are kept: a few hundred belong to one engine, and each way of the air or the ranges adds some.</summary>
    private const int MostOutcomes = 4096;

    private readonly ConcurrentDictionary<string, PreparedCheck[]> _prepared = [];
    private readonly ConcurrentDictionary<(string Check, Circumstances? At, string? Gap), OutcomeTable> _outcomes = [];

    /// <summary>The checks of an engine that stands in a certain way.</summary>
    public PreparedCheck[] Prepared(string standing, Func<PreparedCheck[]> find)
    {
        if (_prepared.Count >= MostStandings)
        {
            _prepared.Clear();
        }

        return _prepared.GetOrAdd(standing, _ => find());
    }

    public OutcomeTable Outcomes(string check, Circumstances? at, string? gap, Func<OutcomeTable> find)
    {
        if (_outcomes.Count >= MostOutcomes)
        {
            _outcomes.Clear();
        }

        return _outcomes.GetOrAdd((check, at, gap), _ => find());
    }
}
