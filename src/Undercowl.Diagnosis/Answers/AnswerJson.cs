using System.Text.Json.Serialization;

namespace Undercowl.Diagnosis.Answers;

/// <summary>The answer documents as JSON, the same for terminal, browser and server.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(BeliefAnswer))]
[JsonSerializable(typeof(NextAnswer))]
[JsonSerializable(typeof(JobAnswer))]
[JsonSerializable(typeof(SignOffAnswer))]
[JsonSerializable(typeof(WhyAnswer))]
[JsonSerializable(typeof(AuditAnswer))]
[JsonSerializable(typeof(SensitivityAnswer))]
[JsonSerializable(typeof(ReportAnswer))]
[JsonSerializable(typeof(ProofAnswer))]
public sealed partial class AnswerJson : JsonSerializerContext;
