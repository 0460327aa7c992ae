using System.Text;
using System.Text.Json.Nodes;
using CsCheck;

namespace Undercowl.Jobs.Tests.Canonical;

public sealed class CanonicalJsonPropertyTests
{
    private static readonly Gen<string> Texts = Gen.Char.Where(c => !char.IsSurrogate(c)).Array[0, 6].Select(chars => new string(chars) + "\ud83d\ude00");

    [Fact]
    public void Writing_twice_changes_nothing_and_neither_does_the_order_of_members() => Gen.Dictionary(Texts, Texts)[0, 8].Sample(members =>
    {
        var one = Canonical(members);
        Assert.Equal(one, Canonical(members.Reverse()));
        Assert.Equal(one, Encoding.UTF8.GetString(CanonicalJson.Of(Encoding.UTF8.GetBytes(one))));
        // independent: System.Text.Json's own reader gives the same texts back.
        var read = JsonNode.Parse(one)!.AsObject();
        Assert.Equal(members.Count, read.Count);
        Assert.All(members, member => Assert.Equal(member.Value, (string?)read[member.Key]));
    });

    private static string Canonical(IEnumerable<KeyValuePair<string, string>> members)
    {
        var node = new JsonObject();
        foreach (var (key, value) in members)
            node[key] = value;
        return Encoding.UTF8.GetString(CanonicalJson.Of(Encoding.UTF8.GetBytes(node.ToJsonString())));
    }
}
