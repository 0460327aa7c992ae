using System.Globalization;
using Undercowl.Diagnosis.Answers;

namespace Undercowl.Cli;

/// <summary>Shows what a belief rests on, number by number, and what other numbers would make of it.</summary>
internal static class AuditText
{
    /// <summary>So many of the likeliest causes are ranked anew.</summary>
    private const int Ranked = 8;

    /// <param name="shell">The terminal.</param>
    /// <param name="open">The job.</param>
    /// <param name="cause">The cause's id.</param>
    /// <param name="with">Numbers to be changed, each as <c>ADDRESS=VALUE</c>.</param>
    public static Answer Of(Shell shell, JobAtHand open, string cause, string[] with)
    {
        var answer = open.Diagnosis.Audit(cause);
        if (with.Length > 0)
        {
            var changed = shell.Knowledge.Bench.With([.. with.Select(Number)]).Open(open.Job);
            answer = answer with { Changed = Changed(open.Diagnosis.BeliefNow().Causes, changed.BeliefNow().Causes, cause) };
        }

        answer = answer with { Factors = [.. answer.Factors.Select(f => Placed(shell, f))] };
        return Answer.Of(answer, AnswerJson.Default.AuditAnswer, Write);
    }

    /// <summary>The number with the line that it stands on.</summary>
    public static FactorAnswer Placed(Shell shell, FactorAnswer factor) => factor with { Stands = shell.Knowledge.Lines.GetValueOrDefault(factor.Address) };

    private static (string Address, double Value) Number(string text)
    {
        var at = text.LastIndexOf('=');
        return at > 0 && double.TryParse(text[(at + 1)..], NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
            ? (text[..at], value)
            : throw new Refusal($"\"{text}\" is not a number's address and a value.", "Write --with ADDRESS=VALUE, for example with an address that --audit shows.");
    }

    /// <summary>The causes that lead before or after, and the one asked about.</summary>
    private static List<ChangedCause> Changed(IReadOnlyList<CauseBelief> before, IReadOnlyList<CauseBelief> after, string cause)
    {
        var were = before.ToDictionary(c => c.Cause, c => c.AsFound);
        CauseBelief[] order = [.. after.Where(c => !c.Consequence).OrderByDescending(c => Math.Round(c.AsFound, 12)).ThenBy(c => c.Cause, StringComparer.Ordinal)];
        var led = before.Where(c => !c.Consequence).OrderByDescending(c => Math.Round(c.AsFound, 12)).ThenBy(c => c.Cause, StringComparer.Ordinal).Take(Ranked).Select(c => c.Cause).Append(cause).ToHashSet();
        return [.. order.Where((c, i) => i < Ranked || led.Contains(c.Cause)).Select(c => new ChangedCause(c.Cause, c.Name, were[c.Cause], c.AsFound))];
    }

    private static void Write(AuditAnswer answer, Page page)
    {
        page.Line(page.Paint.Strong(answer.Name));
        page.Line($"As found {BeliefText.Percent(answer.AsFound)}. It rests on {answer.Factors.Count} numbers:");
        page.Line();
        page.Table(
        [
            ["value", "source", "stands on", "what"],
            .. answer.Factors.Select(f => new[] { Value(f), f.Source ?? f.SourceKind, f.Stands ?? f.Address, $"{f.Use}: {f.What}" }),
        ]);
        page.Line();
        foreach (var source in answer.Factors.Where(f => f.Cite.Length > 0).DistinctBy(f => f.Source ?? f.Cite))
        {
            page.Item("", $"{source.Source ?? "entered"} ({source.SourceKind}): {source.Cite}");
        }

        if (answer.Changed is { } changed)
        {
            page.Line();
            page.Line("With the other numbers:");
            page.Table([["as it stands", "instead", "cause"], .. changed.Select(c => new[] { BeliefText.Percent(c.AsFound), BeliefText.Percent(c.Instead), c.Name })]);
        }

        page.Line();
        page.Item("", "To see what another value would make of it: --with ADDRESS=VALUE. Addresses are in the answer that --json gives.");
    }

    private static string Value(FactorAnswer factor) => string.Create(CultureInfo.InvariantCulture, $"{factor.Value:0.######}{(factor.Unit is { } unit ? " " + unit : "")}");
}
