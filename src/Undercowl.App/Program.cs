using System.Runtime.Versioning;
using Microsoft.AspNetCore.Components.WebAssembly.Hosting;
using Undercowl.App;
using Undercowl.App.Browser;
using Undercowl.App.Desk;

[assembly: SupportedOSPlatform("browser")]

// The worker starts this same program's runtime and asks its exports; only the page comes this way.
var builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<App>("#app");
builder.Services.AddSingleton<JobDesk>();
await Task.WhenAll(Store.Import(), BenchWorker.Import(), Device.Import());
await builder.Build().RunAsync();
