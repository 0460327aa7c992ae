namespace Undercowl.Inference;

/// <summary>The values of a tape that is still being written.</summary>
internal sealed class RunningValues(Tape tape)
{
    private double[] _values = new double[tape.Rows];
    private int _steps;

    /// <summary>The powers of two taken out of the steps so far.</summary>
    public long Exponent { get; private set; }

    /// <summary>Where the leaves write their numbers before the first step.</summary>
    public double[] Room() => _values;

    public ReadOnlySpan<double> Of(Table table) => _values.AsSpan(table.Offset, table.Count);

    /// <summary>Works out the steps that were added since the last time.</summary>
    public void Evaluate()
    {
        if (_values.Length < tape.Rows)
            Array.Resize(ref _values, Math.Max(tape.Rows, 2 * _values.Length));
        _values[Tape.One] = 1;
        for (; _steps < tape.Steps.Count; _steps++)
            Exponent += Tape.Up(tape.Steps[_steps], _values, out _);
    }
}
