using Microsoft.AspNetCore.Http;

namespace OnboardHeat.Glance.Routing;

/// <summary>One route of the page and its interface.</summary>
/// <param name="Method">GET or POST.</param>
/// <param name="Path">Path, a template where it has braces.</param>
/// <param name="Access">What it needs.</param>
/// <param name="Summary">What it gives, as the interface description says it.</param>
/// <param name="Serve">Serves an admitted request.</param>
internal sealed record Route(string Method, string Path, Access Access, string Summary, Func<HttpContext, Task> Serve);
