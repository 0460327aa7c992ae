using System.CommandLine;

namespace Undercowl.Cli.Commands;

/// <summary>Arguments and options that several commands share, so that they read alike everywhere.</summary>
internal static class CommonArguments
{
    public static Argument<string> Job() => new("JOB") { Description = "The job's file." };

    public static Option<string?> At(string what) => new("--at") { HelpName = "PLACE", Description = $"Where {what}: engine, cyl:2, pair:1+4, bank:A… May be left out when there is one place only." };

    public static Option<int?> Top(string what)
    {
        var top = new Option<int?>("--top") { HelpName = "N", Description = what };
        top.Validators.Add(result =>
        {
            if (result.Tokens is [{ Value: var text }] && (!int.TryParse(text, out var n) || n < 1))
            {
                result.AddError($"--top wants a whole number of at least 1, not \"{text}\".");
            }
        });
        return top;
    }

    /// <summary><c>key=value</c> words as a map; refuses anything else.</summary>
    public static Dictionary<string, string> Map(IEnumerable<string>? words)
    {
        var map = new Dictionary<string, string>();
        foreach (var word in words ?? [])
        {
            var equals = word.IndexOf('=', StringComparison.Ordinal);
            if (equals < 1 || equals == word.Length - 1)
            {
                throw new Refusal($"\"{word}\" is not of the form KEY=VALUE.", "Write for example heat=hot, or KEY@cyl:2=VALUE.");
            }

            map[word[..equals]] = word[(equals + 1)..];
        }

        return map;
    }
}
