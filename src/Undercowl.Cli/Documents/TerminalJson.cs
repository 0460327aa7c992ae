using System.Text.Json.Serialization;
using Undercowl.Diagnosis.Answers;

namespace Undercowl.Cli.Documents;

/// <summary>The terminal's own documents as JSON; those of the diagnosis are the diagnosis's.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(RecordedAnswer))]
[JsonSerializable(typeof(RefusedAnswer))]
[JsonSerializable(typeof(WithdrawnAnswer))]
[JsonSerializable(typeof(LayoutsAnswer))]
[JsonSerializable(typeof(ChecksAnswer))]
[JsonSerializable(typeof(RemediesAnswer))]
[JsonSerializable(typeof(QuestionsAnswer))]
[JsonSerializable(typeof(ToolsAnswer))]
[JsonSerializable(typeof(SafetyAnswer))]
[JsonSerializable(typeof(SignOffAnswer))]
[JsonSerializable(typeof(MergedAnswer))]
[JsonSerializable(typeof(NetworkAnswer))]
[JsonSerializable(typeof(KnowledgeAnswer))]
[JsonSerializable(typeof(StepShown))]
[JsonSerializable(typeof(StepRecorded))]
[JsonSerializable(typeof(WorkEnded))]
internal sealed partial class TerminalJson : JsonSerializerContext;
