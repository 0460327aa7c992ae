using System.CommandLine;
using System.CommandLine.Parsing;
using Undercowl.Diagnosis;

namespace Undercowl.Cli;

/// <summary>One command: its names and options as the parser knows them, examples for its help, and what it does.</summary>
internal sealed class Verb : Command
{
    private Func<ParseResult, Answer>? _act;
    private readonly Shell _shell;

    public Verb(Shell shell, string name, string summary, params string[] examples)
        : base(name, summary)
    {
        _shell = shell;
        Examples = examples;
        FullName = name;
        Options.Add(Json);
    }

    public Option<bool> Json { get; } = new("--json") { Description = "Print the answer as one line of JSON." };

    /// <summary>Command lines that work, the commonest first.</summary>
    public IReadOnlyList<string> Examples { get; }

    /// <summary>The name with those of the commands it belongs to.</summary>
    public string FullName { get; private set; }

    public Verb Takes(params Symbol[] symbols)
    {
        foreach (var symbol in symbols)
        {
            switch (symbol)
            {
                case Argument argument:
                    Arguments.Add(argument);
                    break;
                case Option option:
                    Options.Add(option);
                    break;
                case Verb verb:
                    verb.FullName = $"{Name} {verb.Name}";
                    Subcommands.Add(verb);
                    break;
                default:
                    throw new ArgumentException($"{symbol.GetType().Name} is neither argument, option nor command", nameof(symbols));
            }
        }

        return this;
    }

    public Verb Does(Func<ParseResult, Answer> act)
    {
        _act = act;
        return this;
    }

    public int Run(ParseResult parsed) => _act!(parsed).Show(_shell, parsed.GetValue(Json));

    /// <summary>What is wrong with the command line, or null. A token that looks like an option is never taken for a value.</summary>
    public string? Mistake(ParseResult parsed)
    {
        if (_act is null)
        {
            return $"\"{FullName}\" wants one of: {string.Join(", ", Subcommands.Select(c => c.Name))}.";
        }

        foreach (var token in parsed.Tokens.TakeWhile(t => t.Type != TokenType.DoubleDash))
        {
            if (token.Type == TokenType.Argument && token.Value.StartsWith("--", StringComparison.Ordinal))
            {
                return $"There is no option \"{token.Value}\". {Near.Mend(token.Value, Options.Select(o => o.Name))}";
            }
        }

        return parsed.Errors.Count > 0 ? parsed.Errors[0].Message : null;
    }
}
