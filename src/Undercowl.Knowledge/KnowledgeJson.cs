using System.Collections;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace Undercowl.Knowledge;

/// <summary>
/// The compact JSON form of a <see cref="KnowledgeBase"/> that terminal, app and tests all read. A member that is left out
/// has its default: an empty collection, false, none.
/// </summary>
/// <remarks>
/// Generated metadata hands every init-only member that the text lacks a null, whatever its initializer says; therefore
/// each collection of these types takes null as empty.
/// </remarks>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.KebabCaseLower,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    RespectNullableAnnotations = true,
    Converters = [typeof(KebabNames<SourceKind>), typeof(KebabNames<PartPath>), typeof(KebabNames<QuantityScope>), typeof(KebabNames<Combination>), typeof(KebabNames<LikelihoodModel>), typeof(KebabNames<Correction>)])]
[JsonSerializable(typeof(KnowledgeBase))]
public sealed partial class KnowledgeJson : JsonSerializerContext
{
    /// <summary>The options to write with: what has its default is left out, what is required is always there.</summary>
    public static JsonSerializerOptions Compact =>
        field ??= new(Default.Options) { TypeInfoResolver = Default.WithAddedModifier(LeaveOutDefaults) };

    /// <summary>Reads compiled knowledge; a <see cref="JsonException"/> names the place that is not as it should be.</summary>
    public static KnowledgeBase Read(ReadOnlySpan<byte> utf8) =>
        JsonSerializer.Deserialize(utf8, Default.KnowledgeBase)
        ?? throw new JsonException("the knowledge is empty; build it again from knowledge/");

    /// <summary>UTF-8, without white space; the same knowledge gives the same bytes.</summary>
    public static byte[] Write(KnowledgeBase knowledge) => JsonSerializer.SerializeToUtf8Bytes(knowledge, Compact.GetTypeInfo(typeof(KnowledgeBase)));

    /// <summary>Required members are always written, also when they are 0 or the first of their enumeration.</summary>
    private static void LeaveOutDefaults(JsonTypeInfo type)
    {
        foreach (var member in type.Properties)
        {
            if (!member.IsRequired)
            {
                member.ShouldSerialize = static (_, value) => value is not (null or false or 0 or 0.0 or ICollection { Count: 0 } or Knowledge.Correction.None);
            }
        }
    }
}

/// <summary>Writes an enumeration's members in kebab case, as the knowledge files spell them.</summary>
public sealed class KebabNames<TEnum>() : JsonStringEnumConverter<TEnum>(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false)
    where TEnum : struct, Enum;
