using System.Globalization;
using System.Text;
using System.Xml;

namespace Undercowl.Inference.Formats;

/// <summary>
/// Writes XMLBIF 0.3: variables with named outcomes, then definitions whose tables list the parents in order with the last
/// fastest and the variable's own outcome fastest of all. Likelihoods become observed two-state children (state "yes").
/// The format has no place for evidence, so an observed state is a PROPERTY of its variable, "observed = state name",
/// which readers that do not know it skip.
/// </summary>
public static class XmlBif
{
    public static string Write(Evidence evidence, string name = "network")
    {
        ArgumentNullException.ThrowIfNull(evidence);
        var written = new Written(evidence);
        var text = new StringBuilder();
        var settings = new XmlWriterSettings { Indent = true, NewLineChars = "\n", OmitXmlDeclaration = true };
        using (var xml = XmlWriter.Create(text, settings))
        {
            xml.WriteStartElement("BIF");
            xml.WriteAttributeString("VERSION", "0.3");
            xml.WriteStartElement("NETWORK");
            xml.WriteElementString("NAME", name);
            for (var v = 0; v < written.Nodes.Count; v++)
                WriteVariable(xml, written, v);
            foreach (var node in written.Nodes)
                WriteDefinition(xml, written, node);
            xml.WriteEndElement();
            xml.WriteEndElement();
        }

        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + text + "\n";
    }

    private static void WriteVariable(XmlWriter xml, Written written, int v)
    {
        var node = written.Nodes[v];
        xml.WriteStartElement("VARIABLE");
        xml.WriteAttributeString("TYPE", "nature");
        xml.WriteElementString("NAME", node.Name);
        foreach (var state in node.States)
            xml.WriteElementString("OUTCOME", state);
        if (written.Observed.TryGetValue(v, out var observed))
            xml.WriteElementString("PROPERTY", "observed = " + node.States[observed]);
        xml.WriteEndElement();
    }

    private static void WriteDefinition(XmlWriter xml, Written written, WrittenNode node)
    {
        xml.WriteStartElement("DEFINITION");
        xml.WriteElementString("FOR", node.Name);
        foreach (var p in node.Parents)
            xml.WriteElementString("GIVEN", written.Nodes[p].Name);
        xml.WriteElementString("TABLE", string.Join(' ', node.Table.Select(p => p.ToString("R", CultureInfo.InvariantCulture))));
        xml.WriteEndElement();
    }
}
