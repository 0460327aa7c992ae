using System.Globalization;
using Undercowl.Diagnosis.Answers;

namespace Undercowl.App.Parts;

/// <summary>A step's cost and what may stand in its way, in words.</summary>
internal static class StepWords
{
    public static string Cost(ProposedStep step, string currency)
    {
        string?[] parts =
        [
            step.Minutes is { } minutes ? string.Create(CultureInfo.InvariantCulture, $"{minutes:0.#} min") : null,
            step.Cost is { } cost && cost > 0 ? string.Create(CultureInfo.InvariantCulture, $"{cost:0.##} {currency}") : null,
            step.ExpectedCostToFinish is { } left && left > 0 ? string.Create(CultureInfo.InvariantCulture, $"then about {left:0} {currency} to finish") : null,
        ];
        return string.Join(", ", parts.OfType<string>());
    }

    public static string Percent(double probability) => probability switch
    {
        0 => "0 %",
        < 0.005 => "under 1 %",
        > 0.995 and < 1 => "over 99 %",
        _ => (probability * 100).ToString("0", CultureInfo.InvariantCulture) + " %",
    };

    public static IReadOnlyList<string> WhyNot(string kind) => kind == "remedy"
        ? ["the part is not to be had", "the customer does not want it", "not here", "I would rather not"]
        : ["cannot be reached", "seized or broken off", "not safe here", "needs a second person", "I would rather not"];
}
