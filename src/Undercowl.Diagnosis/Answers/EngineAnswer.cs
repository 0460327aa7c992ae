namespace Undercowl.Diagnosis.Answers;

/// <summary>The engine to be drawn: its parts in the order of each path, source to cylinder, and what was read where.</summary>
/// <param name="Layout">The layout in words.</param>
/// <param name="Cylinders">How many lanes there are.</param>
/// <param name="Blocks">The parts, in the layout's order.</param>
/// <param name="Lanes">One for each cylinder, ascending: what was read of the cylinder as such.</param>
/// <param name="Whole">What was read of the engine as a whole.</param>
/// <param name="Standing">What of the engine stands otherwise than usual.</param>
public sealed record EngineAnswer(
    string Layout,
    int Cylinders,
    IReadOnlyList<BlockAnswer> Blocks,
    IReadOnlyList<LaneAnswer> Lanes,
    IReadOnlyList<ReadAnswer> Whole,
    IReadOnlyList<StandingAnswer> Standing);

/// <summary>One part as a block that spans the lanes it serves.</summary>
/// <param name="Part">Id, <c>kind@place</c>.</param>
/// <param name="Kind">The part kind.</param>
/// <param name="Name">The part in words, with its place where it needs one.</param>
/// <param name="Short">Its kind in words.</param>
/// <param name="Path">The path that it lies on: start, spark, fuel, air, compression, cooling or unlisted.</param>
/// <param name="Cylinders">The lanes that it serves, ascending.</param>
/// <param name="Suspect">Probability (0 to 1) now that it is bad in the respect in which it is most so; consequences of others do not count.</param>
/// <param name="AsFound">The same of the engine that came in.</param>
/// <param name="Fault">Its likeliest fault in words; null when none is likelier than one in two hundred.</param>
/// <param name="Cause">Id of that fault.</param>
/// <param name="Readings">What was read at the part, latest first.</param>
public sealed record BlockAnswer(
    string Part,
    string Kind,
    string Name,
    string Short,
    string Path,
    IReadOnlyList<int> Cylinders,
    double Suspect,
    double AsFound,
    string? Fault,
    string? Cause,
    IReadOnlyList<ReadAnswer> Readings);

/// <summary>A cylinder, and what was read of it, latest first.</summary>
public sealed record LaneAnswer(int Cylinder, IReadOnlyList<ReadAnswer> Readings);

/// <summary>A reading in words.</summary>
/// <param name="Entry">The finding's entry.</param>
/// <param name="What">The check in words, without its place.</param>
/// <param name="Reading">What was read.</param>
/// <param name="Spec">What it was held against, and whether that is the engine's own; null when against nothing.</param>
/// <param name="Says">good, bad or neither: whether it speaks for the best or against it.</param>
public sealed record ReadAnswer(string Entry, string What, string Reading, string? Spec, string Says);

/// <summary>A state of the engine other than the usual one.</summary>
/// <param name="Key">The set-up key, with its place where it has one; or the swap.</param>
/// <param name="What">In words.</param>
/// <param name="How">How to undo it; null for what need not be undone.</param>
public sealed record StandingAnswer(string Key, string What, string? How);
