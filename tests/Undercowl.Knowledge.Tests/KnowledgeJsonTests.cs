using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization.Metadata;

namespace Undercowl.Knowledge.Tests;

public sealed class KnowledgeJsonTests
{
    // Generated metadata gives init-only members null when the text lacks them, whatever their initializer says.
    [Fact]
    public void A_record_with_its_required_members_alone_has_no_null_where_none_is_allowed()
    {
        var records = Reachable(typeof(KnowledgeBase), []);
        Assert.True(records.Count > 25);
        foreach (var record in records)
        {
            var read = Least(record).Deserialize(record)!;
            Assert.All(record.Properties.Where(p => !p.IsSetNullable), p => Assert.True(p.Get!(read) is not null, $"{record.Type.Name}.{p.Name} is null"));
        }
    }

    [Fact]
    public void A_record_with_its_required_members_at_zero_reads_back_what_was_written()
    {
        foreach (var record in Reachable(typeof(KnowledgeBase), []))
        {
            var written = JsonSerializer.SerializeToNode(Least(record).Deserialize(record), KnowledgeJson.Compact.GetTypeInfo(record.Type))!;
            Assert.Equal(Least(record).ToJsonString(), written.ToJsonString());
            Assert.NotNull(written.Deserialize(record));
        }
    }

    [Fact]
    public void Knowledge_with_a_member_that_is_not_known_is_refused() =>
        Assert.Throws<JsonException>(() => KnowledgeJson.Read("""{"belts":[]}"""u8));

    private static List<JsonTypeInfo> Reachable(Type type, List<JsonTypeInfo> found)
    {
        var info = KnowledgeJson.Default.Options.GetTypeInfo(Nullable.GetUnderlyingType(type) ?? type);
        if (info.Kind == JsonTypeInfoKind.Object && !found.Contains(info))
        {
            found.Add(info);
            foreach (var member in info.Properties)
            {
                Reachable(member.PropertyType, found);
            }
        }
        else if (info.ElementType is { } element)
        {
            Reachable(element, found);
        }

        return found;
    }

    /// <summary>The least that a value of the type can be written as: zeros, empty texts, the first of an enumeration.</summary>
    private static JsonNode Least(JsonTypeInfo info) => info.Kind switch
    {
        JsonTypeInfoKind.Object => new JsonObject(info.Properties.Where(p => p.IsRequired).Select(p => KeyValuePair.Create(p.Name, (JsonNode?)Least(KnowledgeJson.Default.Options.GetTypeInfo(p.PropertyType))))),
        JsonTypeInfoKind.Dictionary => new JsonObject(),
        JsonTypeInfoKind.Enumerable => new JsonArray(),
        _ when info.Type == typeof(string) || info.Type == typeof(OneOrMore) => "",
        _ when info.Type.IsEnum => JsonSerializer.SerializeToNode(Enum.GetValues(info.Type).GetValue(0), info)!,
        _ when info.Type == typeof(bool) => false,
        _ => 0,
    };
}
