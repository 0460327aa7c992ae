using System.Text.Json;
using System.Text.Json.Serialization;

namespace Undercowl.Knowledge;

/// <summary>The compact JSON form of a <see cref="KnowledgeBase"/> that terminal, app and tests all read.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.KebabCaseLower,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingDefault,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    RespectNullableAnnotations = true,
    Converters = [typeof(KebabNames<SourceKind>), typeof(KebabNames<QuantityScope>), typeof(KebabNames<Combination>), typeof(KebabNames<LikelihoodModel>), typeof(KebabNames<Correction>)])]
[JsonSerializable(typeof(KnowledgeBase))]
[JsonSerializable(typeof(List<Source>))]
[JsonSerializable(typeof(List<Hand>))]
[JsonSerializable(typeof(List<Spec>))]
[JsonSerializable(typeof(List<Parameter>))]
[JsonSerializable(typeof(Dictionary<string, string>))]
public sealed partial class KnowledgeJson : JsonSerializerContext
{
    public static KnowledgeBase Read(ReadOnlySpan<byte> utf8) =>
        JsonSerializer.Deserialize(utf8, Default.KnowledgeBase)
        ?? throw new JsonException("the knowledge is empty; build it again from knowledge/");

    public static byte[] Write(KnowledgeBase knowledge) => JsonSerializer.SerializeToUtf8Bytes(knowledge, Default.KnowledgeBase);
}

/// <summary>Writes an enumeration's members in kebab case, as the knowledge files spell them.</summary>
public sealed class KebabNames<TEnum>() : JsonStringEnumConverter<TEnum>(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false)
    where TEnum : struct, Enum;
