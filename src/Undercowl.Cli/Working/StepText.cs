using System.Buffers;
using System.Globalization;
using Undercowl.Diagnosis.Answers;

namespace Undercowl.Cli;

/// <summary>A proposed step as the technician reads it: cautions before steps, the question last.</summary>
internal static class StepText
{
    /// <summary>What a shell would not take as it stands.</summary>
    private static readonly SearchValues<char> Quoted = SearchValues.Create(" '\"\\$&;()<>|*?`");

    public static void Write(ProposedStep step, string currency, Page page)
    {
        page.Item("", page.Paint.Strong(step.Name));
        page.Item("  ", Cost(step, currency) is { Length: > 0 } cost ? $"{char.ToUpperInvariant(cost[0])}{cost[1..]}. Why: {step.Why}" : $"Why: {step.Why}");
        page.Items("  ! ", step.Cautions.Where(c => !c.Acknowledged).Select(Caution));
        if (step.Cautions.Any(c => c.Acknowledged))
        {
            page.Item("  ", page.Paint.Quiet($"Cautions read before: {string.Join(", ", step.Cautions.Where(c => c.Acknowledged).Select(c => c.Id))}"));
        }

        page.Items("  first: ", step.Changes);
        if (step.Tools.Count > 0)
        {
            page.Item("  ", $"Tools: {string.Join(", ", step.Tools)}");
        }

        foreach (var (i, text) in step.Steps.Index())
        {
            page.Item($"  {i + 1}. ", text);
        }

        if (step.Ask.Length > 0)
        {
            page.Item("  ", page.Paint.Strong(step.Ask));
        }

        page.Items("    ", step.WouldMean.Where(w => w.Leading is not null).Select(w => $"if {w.Outcome}, likelier than now: {w.Leading}"));
        if (step.Answers.Count > 0)
        {
            page.Item("  ", $"Answers: {string.Join(" | ", step.Answers)}");
        }
    }

    public static string Caution(CautionAnswer caution) => $"{caution.Text} [{caution.Id}]";

    /// <summary>What the step costs and what is to come, as far as it is reckoned; empty where nothing is.</summary>
    public static string Cost(ProposedStep step, string currency)
    {
        string?[] now =
        [
            step.Minutes is { } minutes ? string.Create(CultureInfo.InvariantCulture, $"{minutes:0.#} min") : null,
            step.Cost is { } cost ? string.Create(CultureInfo.InvariantCulture, $"{cost:0.##} {currency}") : null,
        ];
        var toFinish = step.ExpectedCostToFinish switch
        {
            null => null,
            0 => "nothing more to spend",
            { } left => string.Create(CultureInfo.InvariantCulture, $"about {left:0} {currency} to finish"),
        };
        return string.Join(", then ", new[] { string.Join(", ", now.OfType<string>()), toFinish }.Where(said => said is { Length: > 0 }));
    }

    /// <summary>The command line that records the step, to be copied; where there are several answers, with the first of them.</summary>
    public static string Recording(string path, ProposedStep step)
    {
        path = path.AsSpan().ContainsAny(Quoted) ? $"'{path.Replace("'", "'\\''", StringComparison.Ordinal)}'" : path;
        var at = step.Place is "engine" ? "" : $" --at {step.Place}";
        return step.Kind switch
        {
            "remedy" => $"undercowl remedy {path} {step.Id}{at}",
            "make-safe" => $"undercowl ventilate {path} --met {string.Join(' ', step.Answers)}",
            "set-up" => $"undercowl set-up {path} {string.Join(' ', step.SetUp.Select(s => $"{s.Key}={s.Value}"))}",
            "refer" => $"undercowl sign-off {path} --as referred --by WHO",
            _ => $"undercowl record {path} {step.Id}{at}{(step.With is null ? "" : $" --with {step.With}")}{string.Concat(step.Said.Select(s => $" --set-up {s.Key}={s.Value}"))} {(step.Answers.Count > 1 ? step.Answers[0] : $"NUMBER{(step.Answers.Count > 0 ? step.Answers[0] : "")}")}",
        };
    }
}
