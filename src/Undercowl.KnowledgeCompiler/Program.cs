using System.Text;
using Undercowl.Knowledge;
using Undercowl.KnowledgeCompiler;
using Undercowl.KnowledgeCompiler.Schemas;

const int Good = 0, Bad = 1, Usage = 2;

switch (args)
{
    case ["build", var folder, var output, .. var rest] when Also(rest) is { } also:
        return Build(KnowledgeFolder.Compile(folder, also), output);
    case ["check", var folder, .. var rest] when Also(rest) is { } also:
        return Check(KnowledgeFolder.Compile(folder, also));
    case ["schema", var folder]:
        return Schema(folder);
    default:
        Console.Error.WriteLine(
            """
            Compiles the YAML files of the knowledge folder to the JSON that the programs read.

              build knowledge out.json [--also DIR]...   check and write, and beside it out.lines, where each number stands;
                                                         writes nothing when there are problems
              check knowledge [--also DIR]...            check only, and show notes and counts
              schema knowledge/schema                    write the JSON Schemas that editors use

            Exit code: 0 in order, 1 problems (on the error output, as file:line: what; how to mend it), 2 wrong use.
            """);
        return Usage;
}

static string[]? Also(string[] rest)
{
    var folders = new List<string>();
    for (var i = 0; i < rest.Length; i += 2)
    {
        if (rest[i] != "--also" || i + 1 == rest.Length)
        {
            return null;
        }

        folders.Add(rest[i + 1]);
    }

    return [.. folders];
}

static int Build(CompileResult result, string output)
{
    if (Problems(result) || result.Knowledge is null)
    {
        return Bad;
    }

    Write(Path.ChangeExtension(output, ".lines"), new UTF8Encoding(false).GetBytes(string.Concat(result.Lines.Select(l => $"{l.Key}\t{l.Value}\n"))));
    Write(output, KnowledgeJson.Write(result.Knowledge));
    return Good;
}

// Beside, then renamed: a build that is broken off leaves no half file.
static void Write(string path, byte[] bytes)
{
    var beside = path + ".new";
    File.WriteAllBytes(beside, bytes);
    File.Move(beside, path, overwrite: true);
}

static int Check(CompileResult result)
{
    foreach (var note in result.Notes)
    {
        Console.WriteLine($"{note} (note)");
    }

    Console.WriteLine(string.Join(", ", result.Counts.Where(c => c.Value > 0).Select(c => $"{c.Value} {c.Key}")));
    return Problems(result) ? Bad : Good;
}

static int Schema(string folder)
{
    Directory.CreateDirectory(folder);
    foreach (var (name, text) in SchemaText.All())
    {
        File.WriteAllText(Path.Combine(folder, name), text);
    }

    return Good;
}

static bool Problems(CompileResult result)
{
    foreach (var problem in result.Problems)
    {
        Console.Error.WriteLine(problem);
    }

    return result.Problems.Count > 0;
}
