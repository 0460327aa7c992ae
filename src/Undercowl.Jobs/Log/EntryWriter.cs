namespace Undercowl.Jobs;

/// <summary>
/// Makes the next entry of a job for one device: id, time, count, and as parents all that is latest. It does not add
/// the entry anywhere (see <see cref="Job.With"/> and <see cref="JobFile.Append"/>). Not for use by several threads.
/// </summary>
/// <param name="device">This device's name, 1 to 64 characters, different from every other device's.</param>
/// <param name="clock">Tells the time of entries and ids.</param>
/// <param name="random">Fills the random part of ids.</param>
public sealed class EntryWriter(string device, TimeProvider clock, RandomFill random)
{
    private readonly EntryIds ids = new(clock, random);

    public string Device { get; } = device;

    /// <summary>
    /// The next entry. Throws <see cref="JobException"/> when the body is malformed or names an entry that the job does
    /// not have.
    /// </summary>
    public Entry Next(Job job, EntryBody body)
    {
        foreach (var id in Named(body))
        {
            if (!job.Contains(id))
                throw new JobException($"The {body.Kind} names entry {id}, which is not in this job.", "Name an entry of this job.");
        }

        var (sequence, last) = job.LastOf(Device);
        return Entry.Of(ids.Next(last), clock.GetUtcNow(), Device, sequence + 1, job.Heads, body);
    }

    private static IEnumerable<EntryId> Named(EntryBody body) => body switch
    {
        Withdrawn withdrawn => [withdrawn.Entry],
        Result result => [result.Of],
        Proof proof => proof.Findings,
        Note note => note.About ?? [],
        Photo photo => photo.About ?? [],
        _ => [],
    };
}
