using Undercowl.Knowledge;

namespace Undercowl.Diagnosis.Engine;

/// <summary>A common cause that bears on an aspect.</summary>
/// <param name="Cause">The common cause.</param>
/// <param name="Times">By state of the aspect: how many times likelier under it; 1 for sound, which takes what is left.</param>
internal sealed record Swayed(CommonCause Cause, double[] Times)
{
    /// <summary>The common causes of an engine that bear on the aspect, in the order of the knowledge.</summary>
    public static Swayed[] By(IEnumerable<CommonCause> causes, PartKind part, Aspect aspect, Condition[] conditions)
    {
        var id = $"{part.Id}.{aspect.Id}";
        return
        [
            .. causes.Where(c => c.Likelier.Any(l => l.Aspect == id))
                .Select(c => new Swayed(c, [1, .. conditions.Select(condition => c.TimesOf(id, condition.Id))]))
                .Where(s => s.Times.Skip(1).Zip(conditions).Any(c => c.First != 1 && c.Second.Prior > 0)),
        ];
    }

    /// <summary>Chances of the aspect's states where the cause befell the engine and where it did not, as if there were no other.</summary>
    /// <param name="average">The chances with the cause averaged over.</param>
    public (double[] With, double[] Without) Alone(double[] average)
    {
        double[] without = [0, .. average.Skip(1).Select((p, i) => CommonCauseShare.Without(p, [(Cause.Prior, Times[i + 1])]))];
        double[] with = [0, .. without.Skip(1).Select((p, i) => p * Times[i + 1])];
        (with[0], without[0]) = (1 - with.Sum(), 1 - without.Sum());
        return (with, without);
    }

    /// <summary>By state of the aspect: the chance that the cause befell the engine, as if there were no other.</summary>
    public double[] Befell(double[] average)
    {
        var (with, without) = Alone(average);
        return [.. with.Zip(without, (yes, no) => yes + no > 0 ? Cause.Prior * yes / (Cause.Prior * yes + (1 - Cause.Prior) * no) : Cause.Prior)];
    }
}
