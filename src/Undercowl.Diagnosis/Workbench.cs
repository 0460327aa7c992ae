using System.Collections.Concurrent;
using System.Security.Cryptography;
using System.Text.Json;
using Undercowl.Diagnosis.Answers;
using Undercowl.Diagnosis.Engine;
using Undercowl.Diagnosis.Planning;
using Undercowl.Jobs;
using Undercowl.Knowledge;
using Undercowl.Knowledge.Checking;

namespace Undercowl.Diagnosis;

/// <summary>
/// The one door to the diagnosis: entry lines in, answer documents out. Terminal, browser worker and server all come
/// through here, so the same job gives the same answer everywhere. Jobs may be opened on several threads; one job belongs to one.
/// </summary>
/// <param name="knowledge">Checked knowledge.</param>
/// <param name="knowledgeHash">Its <c>sha256:</c> hash.</param>
public sealed class Workbench(KnowledgeBase knowledge, string knowledgeHash)
{
    /// <summary>First steps that are remembered: those along the run of readings that a job now ends in.</summary>
    private const int Remembered = 64;

    private readonly ConcurrentDictionary<string, EngineModel> _models = [];
    private readonly ConcurrentDictionary<string, StepName> _firsts = [];

    /// <summary>Changes whenever any of the rooms do that an answer comes from.</summary>
    public static string Edition { get; } = string.Join(
        ' ',
        ((Type[])[typeof(Workbench), typeof(Job), typeof(KnowledgeBase), typeof(Undercowl.Planning.Planner), typeof(Undercowl.Inference.Network), typeof(Undercowl.Physics.PhysicsRangeException)])
            .Select(t => t.Module.ModuleVersionId.ToString("N")));

    public KnowledgeBase Knowledge { get; } = knowledge;

    public string KnowledgeHash { get; } = knowledgeHash;

    public JobDiagnosis Open(Job job) => new(this, job);

    /// <summary>A bench with other numbers in the knowledge, to see what hangs on them.</summary>
    /// <param name="numbers">Addresses, see <see cref="KnowledgeNumber"/>, and the values to put there.</param>
    /// <exception cref="DiagnosisException">There is no such number, or it cannot be that.</exception>
    public Workbench With(IReadOnlyList<(string Address, double Value)> numbers)
    {
        ArgumentNullException.ThrowIfNull(numbers);
        var changed = Knowledge;
        foreach (var (address, value) in numbers)
        {
            changed = KnowledgeNumbers.With(changed, address, value)
                ?? throw new DiagnosisException($"There is no number {address} in the knowledge.", Near.Mend(address, KnowledgeNumbers.Of(Knowledge).Select(n => n.Address)));
        }

        return KnowledgeCheck.Faults(changed).FirstOrDefault(f => !f.NoteOnly) is { } fault
            ? throw new DiagnosisException($"With that, {fault.Path}: {fault.Message}.", $"{char.ToUpperInvariant(fault.Mend[0])}{fault.Mend[1..]}.")
            : new Workbench(changed, Knowledge == changed ? KnowledgeHash : "changed");
    }

    /// <summary>Which numbers, moved as far as their source says that they may be off, would change the job's next step. Takes up to a minute, on a large job longer.</summary>
    public SensitivityAnswer Sensitivity(Job job) => Planning.Sensitivity.Of(this, job);

    /// <summary>The layout of this id; test-only ones too.</summary>
    public EngineLayout Layout(string id) => Knowledge.Layouts.FirstOrDefault(l => l.Id == id)
        ?? throw new DiagnosisException($"There is no engine layout \"{id}\".", Near.Mend(id, Knowledge.Layouts.Where(l => !l.TestOnly).Select(l => l.Id)));

    /// <summary>The body that opens a job.</summary>
    public Opened Opening(string layout, string complaint, string? words = null)
    {
        var of = Layout(layout);
        var known = Knowledge.Complaints.Where(c => c.Only.Holds(of)).ToArray();
        var meant = known.FirstOrDefault(c => c.Id == complaint)
            ?? throw new DiagnosisException($"There is no complaint \"{complaint}\".", Near.Mend(complaint, known.Select(c => c.Id)));
        var json = JsonSerializer.Serialize(of, KnowledgeJson.Default.EngineLayout);
        return new Opened(EmbeddedJson.Of(json), KnowledgeHash, new Jobs.Complaint(meant.Id, meant.SetUp, words));
    }

    /// <summary>The first step of a job where these were shown before; worked out once.</summary>
    internal StepName First(Job job, Shown shown, Func<StepName> find)
    {
        if (_firsts.Count > Remembered)
        {
            _firsts.Clear();
        }

        // That cautions were read changes no step, and they are read between the step's being put and its reading.
        using var entries = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var entry in job.Entries.Where(e => e.Body is not CautionAcknowledged))
        {
            entries.AppendData(entry.Line.Span);
        }

        return _firsts.GetOrAdd($"{Convert.ToHexString(entries.GetHashAndReset())} {shown.Step} {string.Join(' ', shown.Left)}", _ => find());
    }

    internal EngineModel Model(EngineLayout layout)
    {
        var key = JsonSerializer.Serialize(layout, KnowledgeJson.Default.EngineLayout);
        return _models.GetOrAdd(key, _ => new EngineModel(Knowledge, layout));
    }
}
