using Undercowl.Cli;

return Application.Run(args, Shell.OfProcess());
