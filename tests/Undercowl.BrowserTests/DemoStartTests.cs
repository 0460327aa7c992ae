using System.Text.Json;
using System.Text.Json.Nodes;
using Undercowl.BrowserTests.Fixtures;
using Undercowl.Cli.Demonstrating;
using Undercowl.Diagnosis.Answers;
using Undercowl.Jobs;

namespace Undercowl.BrowserTests;

/// <summary>The first answer of the demonstration that the app carries is the one that the program gives. Written anew where UNDERCOWL_WRITE_PAGES is set.</summary>
public sealed class DemoStartTests
{
    private const string Folder = "src/Undercowl.App/Desk/";

    [Fact]
    public void The_first_answer_that_the_app_carries_is_worked_out_again()
    {
        var script = JsonSerializer.Deserialize(Repository.Read("demo/demo.json"), DemoJson.Default.DemoScript)!;
        var opening = Bench.Native.Opening(script.Layout, script.Complaint, script.Words);
        // A clock that stands and no chance, so that the ids are the same every time.
        var writer = new EntryWriter("demo", new Standing(), bytes => bytes.Clear());
        var job = Job.Empty;
        foreach (var body in (EntryBody[])[opening, .. script.Intake.Select(i => new Intake(i.Question, i.Answer))])
        {
            job = job.With(writer.Next(job, body));
        }

        var answer = Bench.Native.Open(job).Answer(JobAnswer.Proposals, _ => false);
        var made = new JsonObject
        {
            ["knowledge"] = Bench.Native.KnowledgeHash,
            ["layout"] = JsonNode.Parse(opening.Layout.Text),
            ["layoutName"] = Bench.Native.Layout(script.Layout).Name,
            ["complaint"] = script.Complaint,
            ["setUp"] = new JsonObject(opening.Complaint.SetUp.Select(p => KeyValuePair.Create(p.Key, (JsonNode?)p.Value))),
            ["complaintName"] = answer.Complaint,
            ["words"] = script.Words,
            ["intake"] = new JsonArray([.. script.Intake.Select(i => new JsonArray(i.Question, i.Answer))]),
            ["at"] = ReportEntry.Time(new Standing().GetUtcNow()),
            ["entries"] = new JsonArray([.. job.Entries.Select(e => (JsonNode)e.Id.ToString())]),
            ["step"] = new JsonObject { ["now"] = JsonNode.Parse(JsonSerializer.Serialize(answer.Now, AnswerJson.Default.ProposedStep)), ["currency"] = answer.Next.Currency },
        }.ToJsonString(new JsonSerializerOptions { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping });
        Compare("demo-start.json", made);
        Compare("demo-answer.json", JsonSerializer.Serialize(answer, AnswerJson.Default.JobAnswer));
    }

    private static void Compare(string file, string made)
    {
        if (Environment.GetEnvironmentVariable("UNDERCOWL_WRITE_PAGES") is { Length: > 0 })
        {
            File.WriteAllText(Repository.PathOf(Folder + file), made);
        }

        SameDocument.Assert(JsonDocument.Parse(made).RootElement, JsonDocument.Parse(Repository.Read(Folder + file)).RootElement);
    }

    private sealed class Standing : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => new(2026, 1, 1, 0, 0, 0, TimeSpan.Zero);
    }
}
