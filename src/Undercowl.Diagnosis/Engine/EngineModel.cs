using System.Collections.Concurrent;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Engine;

/// <summary>
/// A layout and the knowledge laid over each other: the parts at their places, their aspects, and for each quantity and
/// cylinder the parts that bear on it. It knows no job, and jobs on several threads may share it.
/// </summary>
internal sealed class EngineModel
{
    private readonly Dictionary<string, Quantity> _quantities;
    private readonly Dictionary<string, SetUpKey> _setUps;
    private readonly ConcurrentDictionary<(string Quantity, int Cylinder), Bearing[]> _bearings = [];
    private readonly ConcurrentDictionary<string, int> _numbers = [];
    private readonly Dictionary<string, QuantityHere> _here;
    private int _numbered;

    public EngineModel(KnowledgeBase knowledge, EngineLayout layout)
    {
        (Knowledge, Layout) = (knowledge, layout);
        _quantities = knowledge.Quantities.ToDictionary(q => q.Id);
        _setUps = knowledge.SetUps.ToDictionary(s => s.Id);
        var kinds = knowledge.Parts.ToDictionary(p => p.Id);
        var placed = LayoutPlaces.Of(layout).ToArray();
        var many = placed.Select(p => p.Kind).CountBy(k => k).ToDictionary();
        Parts = [.. placed.Select((part, i) => new PartInstance(i, kinds[part.Kind], part.Place, [.. part.Cylinders]) { Alone = many[part.Kind] == 1 })];
        CommonCause[] befalling = [.. knowledge.CommonCauses.Where(c => c.Only.Holds(layout))];
        var aspects = new List<AspectInstance>();
        AspectsOf = [.. Parts.Select(part => Instances(part, befalling, aspects))];
        Aspects = [.. aspects];
        CommonCauses = [.. befalling.Where(c => aspects.Exists(a => Array.Exists(a.Swayed, s => s.Cause == c)))];
        Checks = [.. knowledge.Checks.Where(c => c.Only.Holds(layout))];
        Remedies = [.. knowledge.Remedies.Where(r => r.Only.Holds(layout) && Parts.Any(p => p.Kind.Id == r.Part))];
        _here = QuantityHere.All(this);
    }

    public KnowledgeBase Knowledge { get; }

    public EngineLayout Layout { get; }

    public PartInstance[] Parts { get; }

    public AspectInstance[] Aspects { get; }

    /// <summary>Aspects by part index.</summary>
    public AspectInstance[][] AspectsOf { get; }

    /// <summary>What may have befallen this engine and bears on something of it.</summary>
    public CommonCause[] CommonCauses { get; }

    /// <summary>The checks that this layout admits.</summary>
    public Check[] Checks { get; }

    public Remedy[] Remedies { get; }

    /// <summary>What was worked out for steps that come after one another, and holds for all jobs with this engine.</summary>
    public Kept Kept { get; } = new();

    public int QuantityCount => _here.Count;

    public Quantity Quantity(string id) => _quantities[id];

    public QuantityHere Here(string id) => _here[id];

    /// <summary>A number, 1 or more, for a text: the same for the same.</summary>
    public int NumberOf(string text) => _numbers.GetOrAdd(text, _ => Interlocked.Increment(ref _numbered));

    public SetUpKey? SetUpKey(string id) => _setUps.GetValueOrDefault(id);

    public bool HasPart(string kind) => Array.Exists(Parts, p => p.Kind.Id == kind);

    /// <summary>
    /// The seats whose part can hold the quantity down in that lane (0 for the engine as a whole), those that serve more
    /// lanes first, so that what lanes share comes out as one node.
    /// </summary>
    public Bearing[] BearingsOn(string quantity, int cylinder) => _bearings.GetOrAdd((quantity, cylinder), asked =>
        [.. Parts
            .Where(part => asked.Cylinder == 0 || part.Serves(asked.Cylinder))
            .SelectMany(part => Bearings(part, asked.Quantity, asked.Cylinder))
            .OrderByDescending(b => b.Lanes).ThenBy(b => b.Seat.Index).ThenBy(b => b.Aspect, StringComparer.Ordinal).ThenBy(b => b.Position)]);

    private AspectInstance[] Instances(PartInstance part, CommonCause[] befalling, List<AspectInstance> all)
    {
        var start = all.Count;
        foreach (var aspect in part.Kind.Aspects.Where(a => a.Only.Holds(Layout)))
        {
            Condition[] conditions = [.. aspect.Conditions.Where(c => c.Only.Holds(Layout))];
            if (conditions.Length == 0)
            {
                continue;
            }

            var swayed = Swayed.By(befalling, part.Kind, aspect, conditions);
            for (var position = aspect.PerCylinder ? 0 : -1; position < (aspect.PerCylinder ? part.Cylinders.Length : 0); position++)
            {
                all.Add(new AspectInstance(all.Count, part, aspect, position, conditions, swayed));
            }
        }

        return [.. all.Skip(start)];
    }

    private IEnumerable<Bearing> Bearings(PartInstance seat, string quantity, int cylinder)
    {
        foreach (var instance in AspectsOf[seat.Index])
        {
            var lane = instance.Position < 0 ? 0 : seat.Cylinders[instance.Position];
            if (lane != 0 && cylinder != 0 && lane != cylinder)
            {
                continue;
            }

            if (Array.Exists(instance.Conditions, c => c.Effects.ContainsKey(quantity)))
            {
                yield return new Bearing(seat, instance.Aspect.Id, instance.Position, lane == 0 ? seat.Cylinders.Length : 1);
            }
        }
    }
}

/// <summary>The part sitting at a seat bears on a quantity by one aspect, at one position of the seat (-1: all its lanes).</summary>
internal sealed record Bearing(PartInstance Seat, string Aspect, int Position, int Lanes);
