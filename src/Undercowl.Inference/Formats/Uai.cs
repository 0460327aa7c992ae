using System.Globalization;
using System.Text;

namespace Undercowl.Inference.Formats;

/// <summary>
/// Writes the text format of the UAI inference evaluations: a .uai text (type, cardinalities, scopes with the child last,
/// tables with the last variable fastest) and an .evid text (count, then pairs of variable and state). Variables are
/// numbered as in the network, with one more for each likelihood (see <see cref="UaiText"/>). Names are not part of the format.
/// </summary>
public static class Uai
{
    public static UaiText Write(Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        var written = new Written(evidence);
        var text = new StringBuilder("BAYES\n");
        text.Append(Invariant($"{written.Nodes.Count}\n"));
        text.AppendJoin(' ', written.Nodes.Select(n => Invariant($"{n.States.Length}"))).Append('\n');
        text.Append(Invariant($"{written.Nodes.Count}\n"));
        for (var v = 0; v < written.Nodes.Count; v++)
        {
            text.Append(Invariant($"{written.Nodes[v].Parents.Length + 1} "));
            foreach (var p in written.Nodes[v].Parents)
                text.Append(Invariant($"{p} "));
            text.Append(Invariant($"{v}\n"));
        }

        foreach (var node in written.Nodes)
        {
            text.Append(Invariant($"\n{node.Table.Length}\n"));
            for (var i = 0; i < node.Table.Length; i++)
                text.Append(Invariant($"{node.Table[i]:R}")).Append((i + 1) % node.States.Length == 0 ? '\n' : ' ');
        }

        var observed = new StringBuilder(Invariant($"{written.Observed.Count}"));
        foreach (var (node, state) in written.Observed)
            observed.Append(Invariant($" {node} {state}"));
        return new UaiText(text.ToString(), observed.Append('\n').ToString(), written.LogScale);
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

/// <summary>
/// The two texts. Each likelihood became a further two-state variable, observed in state 1, whose probability is the
/// likelihood divided by its largest number: posteriors stay the same, and ln P(evidence) of the texts plus
/// <paramref name="LogScale"/> is that of the evidence they came from.
/// </summary>
public sealed record UaiText(string Network, string Evidence, double LogScale);
