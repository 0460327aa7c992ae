using System.Security.Cryptography;
using Undercowl.Jobs;

// A process that writes to a job until it is stopped, for the tests that stop it. Every id it prints was acknowledged.
//   write FILE DEVICE   records for ever: notes short and long, now and then a merge
//   fill FILE           records until it fails, tells of the failure, and waits for a line before trying once more
//   once FILE           records one entry and merges one
//   hold FILE           opens the job and waits for a line
var output = new StreamWriter(Console.OpenStandardOutput()) { AutoFlush = true, NewLine = "\n" };
try
{
    using var file = JobFile.Open(args[1]);
    foreach (var mended in file.Mended)
        output.WriteLine("mended " + mended);
    switch (args[0])
    {
        case "write":
            Write(file, args[2]);
            break;
        case "fill":
            Fill(file);
            break;
        case "once":
            Once(file);
            break;
        default:
            output.WriteLine("held");
            Console.ReadLine();
            break;
    }

    return 0;
}
catch (JobException error)
{
    output.WriteLine("refused " + error.Message);
    return 3;
}

EntryWriter WriterFor(string device) => new(device, TimeProvider.System, RandomNumberGenerator.Fill);

void Write(JobFile file, string device)
{
    var writer = WriterFor(device);
    var elsewhere = WriterFor(device + "-elsewhere");
    var longText = new string('x', 120_000);
    for (var i = 0; ; i++)
    {
        if (i % 16 == 15)
        {
            var other = elsewhere.Next(file.Job, new Note("from elsewhere"));
            file.MergeIn(file.Job.With(other));
            output.WriteLine(other.Id);
        }

        output.WriteLine(file.Record(writer, new Note(i % 5 == 4 ? longText : "plug 2 wet")).Id);
    }
}

void Once(JobFile file)
{
    output.WriteLine(file.Record(WriterFor("here"), new Note("one")).Id);
    var other = WriterFor("there").Next(file.Job, new Note("two"));
    file.MergeIn(file.Job.With(other));
    output.WriteLine(other.Id);
}

void Fill(JobFile file)
{
    var writer = WriterFor("filler");
    var text = new Note(new string('y', 3000));
    try
    {
        while (true)
            output.WriteLine(file.Record(writer, text).Id);
    }
    catch (JobException error)
    {
        output.WriteLine("refused " + error.Message);
    }

    if (Console.ReadLine() is not null)
        output.WriteLine(file.Record(writer, text).Id);
}
