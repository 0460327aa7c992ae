namespace Undercowl.Knowledge.Checking;

/// <summary>Something in a <see cref="KnowledgeBase"/> that is not as it must be. It knows no file; the compiler does.</summary>
/// <param name="Path">Where: JSON Pointer (RFC 6901) into the knowledge's JSON form, for example <c>/checks/3/likelihood/given</c>.</param>
/// <param name="Message">What is wrong, without a full stop.</param>
/// <param name="Mend">What to do about it.</param>
/// <param name="NoteOnly">True when it may be meant so; the knowledge can be used.</param>
public sealed record KnowledgeFault(string Path, string Message, string Mend, bool NoteOnly = false);
