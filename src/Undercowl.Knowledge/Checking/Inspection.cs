using System.Text.RegularExpressions;

namespace Undercowl.Knowledge.Checking;

/// <summary>One run of the checks: the knowledge by id, and the faults found so far.</summary>
internal sealed partial class Inspection(KnowledgeBase knowledge, IReadOnlySet<string> unreadable)
{
    private readonly List<KnowledgeFault> _faults = [];
    private readonly HashSet<string> _sourcesUsed = [];

    public KnowledgeBase Knowledge => knowledge;

    public Index<Source> Sources { get; } = new("sources", "source", knowledge.Sources, s => s.Id);

    public Index<PartKind> Parts { get; } = new("parts", "part kind", knowledge.Parts, p => p.Id);

    public Index<Quantity> Quantities { get; } = new("quantities", "quantity", knowledge.Quantities, q => q.Id);

    public Index<SetUpKey> SetUps { get; } = new("set-ups", "set-up key", knowledge.SetUps, s => s.Id);

    public Index<Tool> Tools { get; } = new("tools", "tool", knowledge.Tools, t => t.Id);

    public Index<Hand> Hands { get; } = new("hands", "hand", knowledge.Hands, h => h.Id);

    public Index<Check> Checks { get; } = new("checks", "check", knowledge.Checks, c => c.Id);

    public Index<Spec> Specs { get; } = new("specs", "spec item", knowledge.Specs, s => s.Item);

    public Index<Remedy> Remedies { get; } = new("remedies", "remedy", knowledge.Remedies, r => r.Id);

    public Index<Complaint> Complaints { get; } = new("complaints", "complaint", knowledge.Complaints, c => c.Id);

    public Index<CommonCause> CommonCauses { get; } = new("common-causes", "common cause", knowledge.CommonCauses, c => c.Id);

    public Index<ProofItem> Proofs { get; } = new("proofs", "proof", knowledge.Proofs, p => p.Id);

    public Index<IntakeQuestion> Intake { get; } = new("intake", "intake question", knowledge.Intake, q => q.Id);

    public Index<Caution> Cautions { get; } = new("cautions", "caution", knowledge.Cautions, c => c.Id);

    public Index<Interlock> Interlocks { get; } = new("interlocks", "interlock", knowledge.Interlocks, i => i.Id);

    public Index<EngineLayout> Layouts { get; } = new("layouts", "layout", knowledge.Layouts, l => l.Id);

    public IReadOnlyList<KnowledgeFault> Faults => _faults;

    public IReadOnlySet<string> SourcesUsed => _sourcesUsed;

    public void Report(string path, string message, string mend) => _faults.Add(new KnowledgeFault(path, message, mend));

    public void Note(string path, string message, string mend) => _faults.Add(new KnowledgeFault(path, message, mend, NoteOnly: true));

    /// <summary>The record; null when there is none, which is reported unless its file could not be read.</summary>
    public T? Find<T>(Index<T> index, string id, string path)
        where T : class
    {
        var found = index[id];
        if (found is null && !unreadable.Contains(index.Kind) && !unreadable.Contains($"{index.Kind}/{id}"))
        {
            Report(path, $"there is no {index.Word} {id}", NearNames.Mend(id, index.Ids));
        }

        return found;
    }

    /// <summary>
    /// Whether all records of these kinds could be read. What is gathered from a kind that is not whole may lack what a broken
    /// file says, so nothing is at fault for not being in it.
    /// </summary>
    public bool Whole(params ReadOnlySpan<string> kinds)
    {
        foreach (var kind in kinds)
        {
            if (unreadable.Contains(kind) || unreadable.Any(u => u.StartsWith(kind + "/", StringComparison.Ordinal)))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Reports a name that is not one of those that there are.</summary>
    public bool OneOf(string word, string given, IEnumerable<string> known, string path)
    {
        if (known.Contains(given))
        {
            return true;
        }

        Report(path, $"there is no {word} {given}", NearNames.Mend(given, known));
        return false;
    }

    public void Source(string? id, string path, string member = "source")
    {
        if (id is not null)
        {
            _sourcesUsed.Add(id);
            Find(Sources, id, path.Member(member));
        }
    }

    public void CautionsExist(IReadOnlyList<string> cautions, string path)
    {
        for (var i = 0; i < cautions.Count; i++)
        {
            Find(Cautions, cautions[i], path.Member("cautions").Entry(i));
        }
    }

    /// <summary>Reports cautions whose danger the step itself does not carry: no interlock would withhold it.</summary>
    public void HazardsCarried(IReadOnlyList<string> cautions, IReadOnlyList<string> hazards, string path)
    {
        for (var i = 0; i < cautions.Count; i++)
        {
            if (Cautions[cautions[i]]?.Hazard is { } hazard && !hazards.Contains(hazard))
            {
                Report(path.Member("cautions").Entry(i), $"{cautions[i]} warns of {hazard}, which is not among the hazards", $"add {hazard} to hazards, so that an interlock can withhold it");
            }
        }
    }

    /// <summary>Reports ids that are no ids or are there twice. <paramref name="word"/> says of what.</summary>
    public void Ids(string word, IEnumerable<string> ids, string path, string? member = "id")
    {
        var seen = new HashSet<string>();
        foreach (var (i, id) in ids.Index())
        {
            var at = member is null ? path.Entry(i) : path.Entry(i).Member(member);
            if (!IdText().IsMatch(id))
            {
                Report(at, $"\"{id}\" is not an id", "write lower-case letters, digits and hyphens, a letter first, such as " + Proposed(id));
            }

            if (!seen.Add(id))
            {
                Report(at, $"there are two of the {word} {id}", "give one of them another id");
            }
        }
    }

    public void Chance(double? value, string path)
    {
        if (value is < 0 or > 1)
        {
            Report(path, FormattableString.Invariant($"{Pointers.Last(path)} is {value}, which is not a probability"), "write a number from 0 to 1");
        }
    }

    public void AtLeast(double least, double value, string path)
    {
        if (value < least)
        {
            Report(path, FormattableString.Invariant($"{Pointers.Last(path)} is {value}"), FormattableString.Invariant($"write {least} or more"));
        }
    }

    private static string Proposed(string id)
    {
        var proposed = NotInIds().Replace(id.ToLowerInvariant(), "-").Trim('-');
        return IdText().IsMatch(proposed) ? proposed : "widget";
    }

    [GeneratedRegex("^[a-z][a-z0-9-]*\\z")]
    private static partial Regex IdText();

    [GeneratedRegex("[^a-z0-9]+")]
    private static partial Regex NotInIds();
}
