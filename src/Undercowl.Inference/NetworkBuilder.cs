using System.Globalization;

namespace Undercowl.Inference;

/// <summary>
/// Collects nodes, parents before children, and checks each as it comes. A conditional distribution is given as a dense
/// table, as a function of the parents, or as the rows that are not zero. Rows of one parent configuration must sum to 1
/// within <see cref="RowTolerance"/> and are then divided by their sum, so that tables printed to seven digits (one third
/// thrice) make a network whose total is exactly 1; further off is refused.
/// </summary>
public sealed class NetworkBuilder
{
    /// <summary>How far the sum of a row may be from 1 before it is refused.</summary>
    public const double RowTolerance = 1e-6;

    /// <summary>The most states a node may have: a state is stored in one byte.</summary>
    public const int MaximumStates = 256;

    private readonly List<string> _names = [];
    private readonly List<string[]> _stateNames = [];
    private readonly List<int[]> _parents = [];
    private readonly List<Table> _tables = [];
    private readonly HashSet<string> _taken = new(StringComparer.Ordinal);

    public int Count => _names.Count;

    public int States(int node) => _stateNames[node].Length;

    /// <summary>
    /// Adds a node with a dense table: for each parent configuration (parents in order, last fastest) the probability of
    /// each state of the node. Length is the product of the parents' states times <paramref name="states"/>.
    /// </summary>
    public int Add(string name, int states, ReadOnlySpan<int> parents, ReadOnlySpan<double> table) =>
        Add(name, Numbered(name, states), parents, table);

    /// <inheritdoc cref="Add(string, int, ReadOnlySpan{int}, ReadOnlySpan{double})"/>
    public int Add(string name, string[] stateNames, ReadOnlySpan<int> parents, ReadOnlySpan<double> table)
    {
        var states = Check(name, stateNames, parents, out var configurations);
        if (table.Length != (long)configurations * states)
            throw Bad(name, $"its table has {table.Length} numbers, but {configurations} parent configurations times {states} states need {(long)configurations * states}");
        var nonZero = 0;
        foreach (var p in table)
            nonZero += p != 0 ? 1 : 0;
        var configuration = new int[nonZero];
        var state = new int[nonZero];
        var value = new double[nonZero];
        for (int i = 0, k = 0; i < table.Length; i++)
        {
            if (table[i] == 0)
                continue;
            configuration[k] = i / states;
            state[k] = i % states;
            value[k++] = table[i];
        }

        return Store(name, stateNames, parents, configurations, configuration, state, value);
    }

    /// <summary>Adds a node that is a function of its parents: one state of the node per parent configuration.</summary>
    public int AddFunction(string name, int states, ReadOnlySpan<int> parents, ReadOnlySpan<int> stateOfConfiguration) =>
        AddFunction(name, Numbered(name, states), parents, stateOfConfiguration);

    /// <inheritdoc cref="AddFunction(string, int, ReadOnlySpan{int}, ReadOnlySpan{int})"/>
    public int AddFunction(string name, string[] stateNames, ReadOnlySpan<int> parents, ReadOnlySpan<int> stateOfConfiguration)
    {
        Check(name, stateNames, parents, out var configurations);
        if (stateOfConfiguration.Length != configurations)
            throw Bad(name, $"its function has {stateOfConfiguration.Length} values, but there are {configurations} parent configurations");
        var configuration = new int[configurations];
        var value = new double[configurations];
        for (var i = 0; i < configurations; i++)
        {
            configuration[i] = i;
            value[i] = 1;
        }

        return Store(name, stateNames, parents, configurations, configuration, stateOfConfiguration.ToArray(), value);
    }

    /// <summary>
    /// Adds a node by the entries that are not zero: entry k says that parent configuration
    /// <paramref name="configuration"/>[k] (parents in order, last fastest) gives state <paramref name="state"/>[k] the
    /// probability <paramref name="probability"/>[k]. Each configuration must be present; a pair may occur once.
    /// </summary>
    public int AddSparse(
        string name,
        string[] stateNames,
        ReadOnlySpan<int> parents,
        ReadOnlySpan<int> configuration,
        ReadOnlySpan<int> state,
        ReadOnlySpan<double> probability)
    {
        Check(name, stateNames, parents, out var configurations);
        if (configuration.Length != state.Length || state.Length != probability.Length)
            throw Bad(name, "its sparse entries need as many configurations as states and probabilities");
        return Store(name, stateNames, parents, configurations, configuration.ToArray(), state.ToArray(), probability.ToArray());
    }

    public Network Build() => new([.. _names], [.. _stateNames], [.. _parents], [.. _tables]);

    private static string[] Numbered(string name, int states)
    {
        if (states is < 1 or > MaximumStates)
            throw Bad(name, $"it has {states} states; give 1 to {MaximumStates}");
        var names = new string[states];
        for (var i = 0; i < states; i++)
            names[i] = i.ToString(CultureInfo.InvariantCulture);
        return names;
    }

    private static InferenceException Bad(string name, string what) => new(InferenceFault.Network, $"Node '{name}': {what}.");

    private int Check(string name, string[] stateNames, ReadOnlySpan<int> parents, out int configurations)
    {
        ArgumentException.ThrowIfNullOrEmpty(name);
        ArgumentNullException.ThrowIfNull(stateNames);
        if (_taken.Contains(name))
            throw Bad(name, "another node has this name already; names must differ");
        if (stateNames.Length is < 1 or > MaximumStates)
            throw Bad(name, $"it has {stateNames.Length} states; give 1 to {MaximumStates}");
        for (var i = 0; i < stateNames.Length; i++)
        {
            if (Array.IndexOf(stateNames, stateNames[i]) != i)
                throw Bad(name, $"two of its states are called '{stateNames[i]}'");
        }

        var product = 1L;
        for (var i = 0; i < parents.Length; i++)
        {
            if (parents[i] < 0 || parents[i] >= Count)
                throw Bad(name, $"parent number {parents[i]} does not exist yet; add parents before their children");
            if (parents[..i].Contains(parents[i]))
                throw Bad(name, $"parent '{_names[parents[i]]}' is given twice");
            product *= States(parents[i]);
            if (product * stateNames.Length > Array.MaxLength)
                throw Bad(name, "it has too many parent configurations; split it into a chain of smaller nodes");
        }

        configurations = (int)product;
        return stateNames.Length;
    }

    private int Store(
        string name, string[] stateNames, ReadOnlySpan<int> parents, int configurations, int[] configuration, int[] state, double[] value)
    {
        var sum = new double[configurations];
        var seen = new HashSet<long>();
        var kept = 0;
        for (var k = 0; k < value.Length; k++)
        {
            if (configuration[k] < 0 || configuration[k] >= configurations)
                throw Bad(name, $"parent configuration {configuration[k]} is outside 0 to {configurations - 1}");
            if (state[k] < 0 || state[k] >= stateNames.Length)
                throw Bad(name, $"state number {state[k]} is outside 0 to {stateNames.Length - 1}");
            if (!(value[k] >= 0 && value[k] <= double.MaxValue))
                throw Bad(name, string.Create(CultureInfo.InvariantCulture, $"{value[k]} is no probability (row {configuration[k]})"));
            if (!seen.Add((long)configuration[k] * stateNames.Length + state[k]))
                throw Bad(name, $"parent configuration {configuration[k]} gives state '{stateNames[state[k]]}' twice");
            sum[configuration[k]] += value[k];
            kept += value[k] > 0 ? 1 : 0;
        }

        for (var c = 0; c < configurations; c++)
        {
            if (!(Math.Abs(sum[c] - 1) <= RowTolerance))
                throw Bad(name, string.Create(CultureInfo.InvariantCulture, $"the probabilities of {Describe(parents, c)} sum to {sum[c]}, not 1"));
        }

        var columns = new byte[parents.Length + 1][];
        for (var i = 0; i < columns.Length; i++)
            columns[i] = new byte[kept];
        var values = new double[kept];
        var r = 0;
        for (var k = 0; k < value.Length; k++)
        {
            if (value[k] == 0)
                continue;
            var rest = configuration[k];
            for (var i = parents.Length - 1; i >= 0; i--)
            {
                columns[i][r] = (byte)(rest % States(parents[i]));
                rest /= States(parents[i]);
            }

            columns[^1][r] = (byte)state[k];
            values[r++] = value[k] / sum[configuration[k]];
        }

        var node = Count;
        _taken.Add(name);
        _names.Add(name);
        _stateNames.Add([.. stateNames]);
        _parents.Add(parents.ToArray());
        _tables.Add(new Table([.. parents, node], columns, kept, values));
        return node;
    }

    private string Describe(ReadOnlySpan<int> parents, int configuration)
    {
        if (parents.IsEmpty)
            return "its prior";
        var parts = new string[parents.Length];
        for (var i = parents.Length - 1; i >= 0; i--)
        {
            var states = States(parents[i]);
            parts[i] = $"{_names[parents[i]]}={_stateNames[parents[i]][configuration % states]}";
            configuration /= states;
        }

        return "row " + string.Join(", ", parts);
    }
}
