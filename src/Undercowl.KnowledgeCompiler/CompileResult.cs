using Undercowl.Knowledge;

namespace Undercowl.KnowledgeCompiler;

/// <summary>What came of compiling a folder of knowledge.</summary>
/// <param name="Knowledge">The checked knowledge; null when there are problems.</param>
/// <param name="Problems">All problems of all files, by file and line.</param>
/// <param name="Notes">What is allowed but worth a look, such as a fault that no remedy mends.</param>
/// <param name="Counts">How many records of each kind were read, by the name of their folder.</param>
/// <param name="Lines">Where each number stands: its address (see <see cref="KnowledgeNumber"/>) to file and line; empty when there are problems.</param>
public sealed record CompileResult(
    KnowledgeBase? Knowledge,
    IReadOnlyList<KnowledgeProblem> Problems,
    IReadOnlyList<KnowledgeProblem> Notes,
    IReadOnlyDictionary<string, int> Counts,
    IReadOnlyDictionary<string, string> Lines);
