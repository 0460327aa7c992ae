using System.Globalization;
using Undercowl.Inference;

namespace Undercowl.Diagnosis.Beliefs;

/// <summary>Says in sentences why a cause is believed as it is: how far it came, what speaks for it and against it, most telling first, and what hardly matters.</summary>
internal static class Saying
{
    private const string Cylinder = " at cylinder ";

    /// <summary>From so many decibans, what a weight is called. Estimate: a factor of 1.25, 2, 10 and 100 in the odds.</summary>
    private static readonly (double From, string Word)[] Strengths = [(20, "all but settles it"), (10, "strongly"), (3, "clearly"), (1, "a little")];

    /// <param name="cause">The cause in words.</param>
    /// <param name="weights">One weight for each of what was told.</param>
    /// <param name="told">What was told, in order.</param>
    public static IReadOnlyList<string> Of(string cause, WeightsOfEvidence weights, IReadOnlyList<Told> told)
    {
        var said = new List<string> { $"{Upper(cause)}: {Chance(weights.Probability)} as found; {Chance(1 / (1 + Math.Pow(10, -weights.Prior / 10)))} before anything was heard." };
        var groups = Groups(weights, told);
        var telling = groups.Where(g => Math.Abs(g.Decibans) >= Strengths[^1].From).OrderByDescending(g => Math.Round(Math.Abs(g.Decibans), 6)).ToArray();
        said.AddRange(telling.Select(g => string.Create(CultureInfo.InvariantCulture, $"{Strength(g.Decibans)}, {(g.AtLeast ? $"more than {Math.Abs(g.Decibans):0}" : $"{g.Decibans:+0.0;-0.0}")} dB: {g.Words}.")));
        var idle = groups.Where(g => Math.Abs(g.Decibans) < Strengths[^1].From).Select(g => g.Words).ToArray();
        if (idle.Length > 0)
        {
            said.Add($"Next to nothing either way: {string.Join("; ", idle)}.");
        }

        return said;
    }

    /// <summary>The same reading at several cylinders, one after the other, is one thing seen.</summary>
    private static List<(string Words, double Decibans, bool AtLeast)> Groups(WeightsOfEvidence weights, IReadOnlyList<Told> told)
    {
        var found = new List<(string, double, bool)>();
        for (var i = 0; i < told.Count;)
        {
            var end = i + 1;
            while (end < told.Count && IsCylinder(told[i]) && IsCylinder(told[end]) && told[end] with { At = told[i].At } == told[i])
            {
                end++;
            }

            string[] cylinders = [.. Enumerable.Range(i, end - i).Select(k => told[k].At).Where(a => a.StartsWith(Cylinder, StringComparison.Ordinal)).Select(a => a[Cylinder.Length..]).Distinct()];
            var at = cylinders.Length > 1 ? $" at cylinders {string.Join(", ", cylinders[..^1])} and {cylinders[^1]}" : told[i].At;
            found.Add(($"{Lower(told[i].What)}{at}{(told[i].Reading.Length > 0 ? ": " : "")}{told[i].Reading}{told[i].After}", Enumerable.Range(i, end - i).Sum(k => weights.Stepwise[k]), Enumerable.Range(i, end - i).Any(k => weights.StepwiseAtLeast[k])));
            i = end;
        }

        return found;

        static bool IsCylinder(Told told) => told.At.StartsWith(Cylinder, StringComparison.Ordinal);
    }

    private static string Strength(double decibans)
    {
        var (from, word) = Strengths.First(s => Math.Abs(decibans) >= s.From);
        return from >= 20 ? decibans > 0 ? "All but settles it" : "All but rules it out" : $"{Upper(word)} {(decibans > 0 ? "for it" : "against it")}";
    }

    private static string Chance(double probability) => probability switch
    {
        >= 0.995 => "more than 99 %",
        >= 0.01 => string.Create(CultureInfo.InvariantCulture, $"{100 * probability:0} %"),
        >= 0.0001 => string.Create(CultureInfo.InvariantCulture, $"{100 * probability:0.##} %"),
        _ => "less than 0.01 %",
    };

    private static string Upper(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    private static string Lower(string text) => char.ToLowerInvariant(text[0]) + text[1..];
}
