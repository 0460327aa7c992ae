using System.Globalization;
using System.Text;
using Undercowl.Diagnosis.Tests.Fixtures;
using Xunit;

namespace Undercowl.Diagnosis.Tests.RealCases;

/// <summary>
/// docs/real-cases.md is what the model makes of every case. With UNDERCOWL_WRITE_PAGES set the page is written afresh instead of
/// being compared: proposals and probabilities change with the knowledge and the planner.
/// </summary>
public sealed class RealCasesPageTests
{
    private const string PagePath = "docs/real-cases.md";

    [Fact]
    public void The_page_has_every_case_as_the_model_sees_it() => GeneratedPage.Check(PagePath, Page());

    private static string Page()
    {
        RealCase[] cases = [.. RealCase.Ids.Select(RealCase.Read)];
        Standing[] standings = [.. RealCase.Ids.Select(RealCaseTests.Of)];
        var page = new StringBuilder().Append(CultureInfo.InvariantCulture, $"""
            # Real repairs

            Published accounts of resolved faults, condensed in our own words (people, makers and addresses left out), worked as jobs. Cylinder counts
            and ignition are inferred in part, and a layout is a guess where nothing is said of them. The accounts were picked by what was searched for, so their frequencies are no priors. Some end with
            what was seen, without word of the repair.

            The stated cause stands first in {standings.Count(s => s.Rank == 1)} of {cases.Length} cases and among the first three in {standings.Count(s => s.Rank <= 3)}. *Probability* is that the stated cause
            held of the engine that came in, after all entries. Where an account does not tell several causes apart ("key switch or its wiring"), it
            is that at least one holds. *Rank* counts what is more likely than that: each respect of each part, its conditions taken together; what
            only follows from others (a deposit) does not count. *Besides* leaves out other faults that the account itself names. *Proposed* is the
            first proposal before the entry was recorded; `make-safe` comes first once fuel work was done and nobody has said that the air is clear.

            Rows of `knowledge/` that exist because of a case say so in their source. The cases are files in
            `tests/Undercowl.Diagnosis.Tests/RealCases/`, written as entries are typed; a further file is a further case. This page is written by
            that folder's test with `UNDERCOWL_WRITE_PAGES=1`, and compared otherwise.

            | case | complaint | stated cause | probability | rank | besides | why it misses |
            | --- | --- | --- | --- | --- | --- | --- |

            """);
        foreach (var (real, standing) in cases.Zip(standings))
        {
            page.Append(CultureInfo.InvariantCulture, $"| {real.Id[5..]} | {real.Complaint} | {string.Join("<br>", real.Stated.Select(s => $"`{s}`"))} | {Percent(standing.Probability)} | {standing.Rank} | {standing.RankBesides} | {real.Miss} |\n");
        }

        foreach (var (real, standing) in cases.Zip(standings))
        {
            Told(page, real, standing);
        }

        return page.ToString();
    }

    private static void Told(StringBuilder page, RealCase real, Standing standing)
    {
        page.Append(CultureInfo.InvariantCulture, $"\n## Case {real.Id[5..]}\n\n{string.Join("\n", real.Account)}\n\nLayout `{real.Layout}`. Stated cause: {Percent(standing.Probability)}, rank {standing.Rank}.\n\n| proposed | entry |\n| --- | --- |\n");
        var story = real.Told((before, entry) => Row(before, $"`{entry}`"));
        Row(story, "(end of the account)");
        page.Append("\nMost likely as found:");
        foreach (var cause in story.Causes.Where(c => !c.Consequence).OrderByDescending(c => Math.Round(c.AsFound, 9)).ThenBy(c => c.Cause, StringComparer.Ordinal).Take(3))
        {
            page.Append(CultureInfo.InvariantCulture, $" {cause.Name} {Percent(cause.AsFound)};");
        }

        page.Length--;
        page.Append(".\n");

        void Row(Story before, string entry)
        {
            var first = before.Next(1)[0];
            page.Append(CultureInfo.InvariantCulture, $"| {(first.Id.Length > 0 && first.Kind != "make-safe" ? first.Id : first.Kind)}{(first.Place is "engine" or "" ? "" : " " + first.Place)}{(first.With is { } with ? " " + with : "")} | {entry} |\n");
        }
    }

    private static string Percent(double probability) => string.Create(CultureInfo.InvariantCulture, $"{100 * probability:0} %");
}
