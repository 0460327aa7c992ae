using System.Globalization;
using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Engine;

/// <summary>One aspect of one part: the unit that is sound or in one of its conditions. State 0 is sound.</summary>
internal sealed class AspectInstance
{
    public const string Sound = "sound";

    public AspectInstance(int index, PartInstance part, Aspect aspect, int position, Condition[] conditions, Swayed[] swayed)
    {
        (Index, Part, Aspect, Position, Conditions, Swayed) = (index, part, aspect, position, conditions, swayed);
        var output = position < 0 ? "" : "/" + part.Cylinders[position].ToString(CultureInfo.InvariantCulture);
        PartId = part.Id + output;
        Id = $"{PartId}.{aspect.Id}";
        StateNames = [Sound, .. conditions.Select(c => c.Id)];
        Prior = new double[conditions.Length + 1];
        var faults = 0.0;
        for (var i = 0; i < conditions.Length; i++)
        {
            faults += Prior[i + 1] = conditions[i].Prior;
        }

        Prior[0] = Math.Max(0, 1 - faults);
    }

    public int Index { get; }

    public PartInstance Part { get; }

    public Aspect Aspect { get; }

    /// <summary>Which of the part's cylinders it belongs to, as an index into <see cref="PartInstance.Cylinders"/>; -1 for all.</summary>
    public int Position { get; }

    public Condition[] Conditions { get; }

    /// <summary>The common causes that bear on it.</summary>
    public Swayed[] Swayed { get; }

    /// <summary><c>kind@place[/output]</c>.</summary>
    public string PartId { get; }

    /// <summary><c>kind@place[/output].aspect</c>.</summary>
    public string Id { get; }

    public string[] StateNames { get; }

    /// <summary>Chances of the states over all engines, whatever befell them.</summary>
    public double[] Prior { get; }

    public string CauseId(int state) => $"{Id}={StateNames[state]}";
}
