namespace Undercowl.Jobs;

/// <summary>Splits a log into lines and reads each, so that one bad line costs one line.</summary>
internal static class JobParser
{
    public static JobReading Parse(ReadOnlyMemory<byte> bytes, string source)
    {
        var problems = new List<JobProblem>();
        var entries = new Dictionary<EntryId, Entry>();
        var lineOf = new Dictionary<EntryId, int>();
        int? tornAt = null;
        var lacksNewline = false;
        var line = 0;
        for (var start = 0; start < bytes.Length;)
        {
            line++;
            var length = bytes.Span[start..].IndexOf((byte)'\n');
            var last = length < 0 || start + length + 1 == bytes.Length;
            var text = bytes.Slice(start, length < 0 ? bytes.Length - start : length);
            if (last && text.Span.Contains((byte)0))
            {
                // A file system that grew the file before its content reached the disk leaves zeros after a power cut.
                tornAt = start;
                break;
            }

            try
            {
                if (text.IsEmpty)
                    throw new JobException("The line is empty.", "Delete it.");
                if (line == 1 && text.Span.StartsWith("\uFEFF"u8))
                    throw new JobException("The file begins with a byte order mark.", "Save it as UTF-8 without one.");
                Add(Entry.Parse(text), line, entries, lineOf);
                lacksNewline = length < 0;
            }
            catch (JobException) when (length < 0)
            {
                tornAt = start;
                break;
            }
            catch (JobException error)
            {
                problems.Add(error.Problem with { Source = source, Line = line });
            }

            start += text.Length + 1;
        }

        DropCircles(entries, lineOf, source, problems);
        var job = Job.Of(entries.Values);
        return new JobReading(job, [.. problems.OrderBy(problem => problem.Line)], JobNotices.Of(job, source), tornAt, lacksNewline);
    }

    private static void Add(Entry entry, int line, Dictionary<EntryId, Entry> entries, Dictionary<EntryId, int> lineOf)
    {
        // The same line twice is what joining two copies by hand gives; it is the union already.
        if (entries.TryAdd(entry.Id, entry))
            lineOf[entry.Id] = line;
        else if (!entries[entry.Id].Equals(entry))
            throw new JobException(
                $"Entry {entry.Id} stands in line {lineOf[entry.Id]} too, with other bytes.",
                "One of the two was changed after it was recorded: keep the one that another copy of the job has.");
    }

    private static void DropCircles(Dictionary<EntryId, Entry> entries, Dictionary<EntryId, int> lineOf, string source, List<JobProblem> problems)
    {
        CanonicalOrder.Of(entries, out var circular);
        foreach (var entry in circular)
        {
            entries.Remove(entry.Id);
            problems.Add(new JobProblem(
                source, lineOf[entry.Id], $"Entry {entry.Id} follows itself by way of its parents.",
                "Parents were changed by hand: restore the line from another copy of the job."));
        }
    }
}
