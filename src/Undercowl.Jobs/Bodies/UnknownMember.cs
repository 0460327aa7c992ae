namespace Undercowl.Jobs;

/// <summary>
/// A member of an entry that this version does not know, for example one that a later version added. It stays in the
/// entry's bytes and is to be shown, not dropped and not guessed at.
/// </summary>
/// <param name="Path">Where it stands, for example <c>body.reading.trace</c>.</param>
/// <param name="Json">Its value in canonical form.</param>
public sealed record UnknownMember(string Path, string Json);
