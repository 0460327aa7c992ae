using Undercowl.Server;

var builder = WebApplication.CreateBuilder(args);
var app = builder.Build();
app.UseMiddleware<SafetyHeaders>();
app.MapStaticAssets();
app.MapFallbackToFile("index.html");
app.Run();
