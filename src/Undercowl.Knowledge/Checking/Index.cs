namespace Undercowl.Knowledge.Checking;

/// <summary>The records of one kind by id. Of records with the same id the first counts.</summary>
/// <param name="Kind">Name of the kind's member in the knowledge, such as <c>parts</c>.</param>
/// <param name="Word">What one is called, such as "part kind".</param>
/// <param name="All">In the order of the knowledge.</param>
/// <param name="Id">The id of a record.</param>
internal sealed record Index<T>(string Kind, string Word, IReadOnlyList<T> All, Func<T, string> Id)
    where T : class
{
    private readonly Dictionary<string, T> _byId = All.GroupBy(Id).ToDictionary(g => g.Key, g => g.First());

    public IEnumerable<string> Ids => _byId.Keys;

    public T? this[string id] => _byId.GetValueOrDefault(id);

    public string Path(int index) => $"/{Kind}".Entry(index);
}
