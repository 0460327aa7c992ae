using System.Text;
using CsCheck;
using Undercowl.Knowledge.Tests.Fixtures;
using Undercowl.KnowledgeCompiler;

namespace Undercowl.Knowledge.Tests.Compiler;

public sealed class KnowledgeFolderTests
{
    [Fact]
    public void Sound_knowledge_compiles_without_problems_or_notes()
    {
        using var small = new SmallKnowledge();
        var result = small.Compile();
        Assert.Empty(result.Problems);
        Assert.Empty(result.Notes);
        Assert.NotNull(result.Knowledge);
        Assert.Equal((3, 9, 5, 1), (result.Counts["parts"], result.Counts["quantities"], result.Counts["checks"], result.Counts["aliases"]));
    }

    [Fact]
    public void What_the_files_say_is_what_the_knowledge_holds()
    {
        using var small = new SmallKnowledge();
        var knowledge = small.Compile().Knowledge!;
        var rubbing = knowledge.Parts.Single(p => p.Id == "coil").Aspects[0].Conditions[2];
        Assert.Equal((0.02, 0.4, "weak"), (rubbing.Prior, rubbing.Shows, rubbing.Effects["kv"]));
        var wire = knowledge.SetUps.Single(s => s.Id == "stop-wire");
        Assert.Equal(["on", "off", "helped"], wire.Values.Select(v => v.Id));
        Assert.Equal(["stopped"], wire.Values[1].Cuts["kv"].Values);
        Assert.Equal(["rough", "not"], knowledge.Interlocks[0].OpenedBy[2].Choice!.Values);
        Assert.Equal(Correction.CopperTo20, knowledge.Checks.Single(c => c.Id == "coil-resistance").Likelihood.Correct);
        Assert.Equal([1, 2], knowledge.Layouts[0].FiringOrder);
    }

    [Fact]
    public void Compiled_knowledge_reads_back_as_the_same_knowledge()
    {
        using var small = new SmallKnowledge();
        var bytes = KnowledgeJson.Write(small.Compile().Knowledge!);
        var read = KnowledgeJson.Read(bytes);
        Assert.Equal(Encoding.UTF8.GetString(bytes), Encoding.UTF8.GetString(KnowledgeJson.Write(read)));

        // Zeros and first members of enumerations that are required survive; what was left out is empty, not null.
        Assert.Equal(0, read.Costs[0].Value);
        Assert.Equal(QuantityScope.Cyl, read.Quantities.Single(q => q.Id == "kv").Per);
        Assert.Empty(read.Quantities.Single(q => q.Id == "kv").Rows);
    }

    [Fact]
    public void The_hash_is_that_of_the_bytes_and_the_same_on_every_compile()
    {
        using var one = new SmallKnowledge();
        using var two = new SmallKnowledge();
        var first = KnowledgeHash.Of(KnowledgeJson.Write(one.Compile().Knowledge!));
        Assert.Equal(first, KnowledgeHash.Of(KnowledgeJson.Write(two.Compile().Knowledge!)));
        two.Change("parts/ring.yaml", "prior: 0.07", "prior: 0.08");
        Assert.NotEqual(first, KnowledgeHash.Of(KnowledgeJson.Write(two.Compile().Knowledge!)));

        // certified: NIST FIPS 180-4 example computation, SHA-256 of the one-block message "abc".
        Assert.Equal("sha256:ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", KnowledgeHash.Of("abc"u8));
    }


    [Fact]
    public void All_problems_of_all_files_are_told_and_a_broken_file_is_not_told_again_by_those_that_name_it()
    {
        using var small = new SmallKnowledge();
        small.Change("parts/ring.yaml", "prior: 0.07", "prior: seldom");
        small.Change("quantities/firing.yaml", "combine: count-fold", "combine: count");
        small.Change("complaints/no-start.yaml", "good: [well]", "good: [fine]");
        small.Change("sources.yaml", "kind: estimate", "kind: guess");
        Assert.Equal(
            ["complaints/no-start.yaml:13", "parts/ring.yaml:9", "quantities/firing.yaml:5", "sources.yaml:2"],
            small.Compile().Problems.Select(p => $"{Path.GetRelativePath(small.Folder, p.File)}:{p.Line}"));
    }

    [Fact]
    public void Whichever_line_is_lost_or_emptied_the_compile_tells_problems_or_gives_knowledge()
    {
        using var small = new SmallKnowledge();
        string[] values = ["", ": []", ": {}", ": [x]", ": 1e300", ": -1"];
        string[] files = [.. Directory.EnumerateFiles(small.Folder, "*.yaml", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Select(f => Path.GetRelativePath(small.Folder, f))];
        Gen.Select(Gen.Int[0, files.Length - 1].Select(i => files[i]), Gen.Double[0, 0.999], Gen.Int[0, values.Length - 1].Select(i => values[i])).Sample(
            (file, place, value) =>
            {
                var whole = small.Read(file);
                var lines = whole.TrimEnd('\n').Split('\n').ToList();
                var at = (int)(place * lines.Count);
                var colon = lines[at].IndexOf(':', StringComparison.Ordinal);
                lines[at] = value.Length == 0 || colon < 0 ? "" : lines[at][..colon] + value;
                small.Write(file, string.Join('\n', lines));
                try
                {
                    var result = small.Compile();
                    return result.Problems.Count > 0 == result.Knowledge is null && result.Problems.All(p => p.Line >= 1 && p.Message.Length > 0 && p.Mend.Length > 0);
                }
                finally
                {
                    small.Write(file, whole);
                }
            },
            seed: "0000KOIPe647",
            iter: 200,
            threads: 1);
    }

    [Fact]
    public void A_problem_is_printed_as_file_line_message_and_mend() =>
        Assert.Equal("parts/a.yaml:7: it is wrong; mend it", new KnowledgeProblem("parts/a.yaml", 7, "it is wrong", "mend it").ToString());

    [Fact]
    public void Records_of_a_further_folder_are_added_and_keep_their_own_lines()
    {
        using var small = new SmallKnowledge();
        using var other = new SmallKnowledge();
        foreach (var file in Directory.EnumerateFiles(other.Folder, "*", SearchOption.AllDirectories).Where(f => !f.Contains("layouts", StringComparison.Ordinal)))
        {
            File.Delete(file);
        }

        Assert.Contains(small.Compile(other.Folder).Problems, p => p.File == other.At("layouts/two.yaml") && p.Message.Contains("two of the layout two", StringComparison.Ordinal));
        File.Move(other.At("layouts/two.yaml"), other.At("layouts/another.yaml"));
        other.Change("layouts/another.yaml", "id: two", "id: another");
        Assert.Equal(["two", "another"], small.Compile(other.Folder).Knowledge!.Layouts.Select(l => l.Id));
        other.Change("layouts/another.yaml", "[cyl:1, cyl:2]", "[cyl:1, cyl:3]");
        var problem = Assert.Single(small.Compile(other.Folder).Problems);
        Assert.Equal((other.At("layouts/another.yaml"), 13), (problem.File, problem.Line));
    }

    [Theory]
    [InlineData("part/ring.yaml", "no knowledge files in a folder part", "did you mean parts?")]
    [InlineData("source.yaml", "no knowledge file source.yaml", "did you mean sources?")]
    [InlineData("parts/belt.yml", "ends in .yml", "name it .yaml")]
    public void A_file_in_the_wrong_place_is_told(string file, string message, string mend)
    {
        using var small = new SmallKnowledge();
        small.Write(file, "id: ring\nname: ring\n");
        var problem = Assert.Single(small.Compile().Problems);
        Assert.Equal(small.At(file), problem.File);
        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
        Assert.Contains(mend, problem.Mend, StringComparison.Ordinal);
    }

    [Fact]
    public void An_empty_file_and_a_folder_that_is_not_there_are_told()
    {
        using var small = new SmallKnowledge();
        small.Write("remedies/nothing.yaml", "# only a comment\n");
        Assert.Equal("the file is empty", Assert.Single(small.Compile().Problems).Message);
        Assert.Equal("there is no such folder", Assert.Single(KnowledgeFolder.Compile(small.At("nowhere")).Problems).Message);
    }
}
