using Undercowl.Knowledge.Tests.Fixtures;

namespace Undercowl.Knowledge.Tests.Checking;

/// <summary>What is told as a note only: the knowledge still compiles. Derived.</summary>
public sealed class NoteTests
{
    [Theory]
    [InlineData("remedies/clean-plug.yaml", "conditions: [worn]", "conditions: []", null)]
    [InlineData("remedies/clean-plug.yaml", "  - {aspect: deposit, not-cured: 0.1}\n", "", "no remedy mends plug.deposit: oily")]
    [InlineData("layouts/two.yaml", "  - {part: ring, at: each cyl}\n", "", "no layout has a ring")]
    [InlineData("quantities/stopped.yaml", "inputs:\n  - quantity: lanyard\n", "", "nothing reads lanyard or follows from it")]
    [InlineData("sources.yaml", "- id: invented\n", "- {id: unread, kind: from-memory, cite: none}\n- id: invented\n", "nothing names the source unread")]
    [InlineData("specs.yaml", "low: 80", "low: 80\n  only: {strokes: two}", null)]
    // One look at fresh 0.02: 0.98 * 0.9 + 0.02 * 0.1 = 0.884 against 0.98 * 0.012 + 0.02 * 0.988 = 0.03152, a ratio of 28.05;
    // endless looks: 0.9 / 0.012 = 75. 10 log10(75 / 28.05) = 4.27.
    [InlineData("checks/coil-resistance.yaml", "fresh: 0.01", "fresh: 0.02", "over range seen again and again would weigh 4.3 dB more for open against sound than seen once")]
    public void What_may_be_meant_so_is_a_note(string file, string old, string changed, string? note)
    {
        using var small = new SmallKnowledge();
        small.Change(file, old, changed);
        var result = small.Compile();
        Assert.Empty(result.Problems);
        Assert.NotNull(result.Knowledge);
        Assert.Equal(note is null ? [] : [note], result.Notes.Select(n => n.Message));
    }
}
