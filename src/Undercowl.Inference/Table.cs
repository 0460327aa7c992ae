namespace Undercowl.Inference;

/// <summary>
/// The rows of a function of a few discrete variables that are not zero. Row r has state <c>Columns[i][r]</c> of
/// variable <c>Scope[i]</c>; rows are distinct and in no promised order. It holds structure only where
/// <see cref="Values"/> is empty (a result whose numbers live in a <see cref="Tape"/>).
/// One byte a state and one column a variable, so a scope may be as wide as it needs to be: no key is ever packed.
/// </summary>
internal sealed class Table(int[] scope, byte[][] columns, int count, double[] values)
{
    public int[] Scope { get; } = scope;

    public byte[][] Columns { get; } = columns;

    public int Count { get; } = count;

    public double[] Values { get; } = values;

    /// <summary>Index of the first row in the tape's value array; set when the table joins a tape.</summary>
    public int Offset { get; set; }

    /// <summary>True for a table of ones that only says which joint states can occur; it has no place on a tape.</summary>
    public bool Guide { get; init; }

    public byte[] ColumnOf(int variable) => Columns[Array.IndexOf(Scope, variable)];

    public bool Covers(int variable) => Array.IndexOf(Scope, variable) >= 0;
}
