using System.Xml.Linq;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using OnboardHeat.Conventions.Tests.Support;

namespace OnboardHeat.Conventions.Tests;

/// <summary>Arrows between projects point inward only: Daemon, adapters, Engine, Core.</summary>
public sealed class ArrowTests
{
    private static readonly Dictionary<string, string[]> s_allowed = new()
    {
        ["Core"] = [],
        ["Engine"] = ["Core"],
        ["Simulation"] = ["Core"],
        ["Probes"] = ["Engine", "Core"],
        ["Outputs"] = ["Engine", "Core"],
        ["History"] = ["Engine", "Core"],
        ["Messaging"] = ["Engine", "Core"],
        ["Glance"] = ["Engine", "Core"],
        ["Daemon"] = ["Core", "Engine", "Simulation", "Probes", "Outputs", "History", "Messaging", "Glance"],
    };

    /// <summary>What would let time, disk, network or threads into the core.</summary>
    private static readonly string[] s_notInCore =
    [
        "File", "Directory", "FileStream", "Console", "Environment", "TimeProvider", "Task", "ValueTask", "Thread",
        "Socket", "HttpClient",
        "Random", "Process", "ILogger", "Lock",
    ];

    [Fact]
    public void Projects_ReferenceInwardOnly() => House.AssertNone(
        from project in Projects()
        from reference in References(project.File)
        where !s_allowed[project.Name].Contains(reference)
        select $"{project.Name} references {reference}");

    [Fact]
    public void EveryProject_HasItsPlaceInTheHouse() =>
        Assert.Equal(
            s_allowed.Keys.Order(StringComparer.Ordinal), Projects().Select(p => p.Name).Order(StringComparer.Ordinal));

    [Fact]
    public void Core_HasNoPackage() => Assert.Empty(Projects().Where(p => p.Name == "Core")
        .SelectMany(p => XDocument.Load(p.File).Descendants("PackageReference")));

    [Fact]
    public void Core_KnowsNoClockNoDiskNoThread() => House.AssertNone(
        from file in House.Source.Where(f => f.Project == "OnboardHeat.Core")
        from name in file.Unit.DescendantNodes().OfType<IdentifierNameSyntax>()
        where s_notInCore.Contains(name.Identifier.Text)
            || (name.Identifier.IsKind(SyntaxKind.IdentifierToken) && name.Identifier.Text is "await")
        select $"{file.At(name)}: {name.Identifier.Text}");

    [Fact]
    public void Core_HasNoAsyncMethod() => House.AssertNone(
        from file in House.Source.Where(f => f.Project == "OnboardHeat.Core")
        from method in file.Unit.DescendantNodes().OfType<MethodDeclarationSyntax>()
        where method.Modifiers.Any(SyntaxKind.AsyncKeyword)
        select file.At(method));

    [Fact]
    public void OnlyTheDaemon_IsAProgram() => House.AssertNone(
        from project in Projects()
        where project.Name != "Daemon"
            && XDocument.Load(project.File).Descendants("OutputType").Any(o => o.Value == "Exe")
        select project.Name);

    private static IEnumerable<(string Name, string File)> Projects() =>
        from folder in Directory.EnumerateDirectories(Path.Combine(House.Root, "src"))
        from file in Directory.EnumerateFiles(folder, "*.csproj")
        select (Path.GetFileNameWithoutExtension(file)["OnboardHeat.".Length..], file);

    private static IEnumerable<string> References(string project) =>
        XDocument.Load(project).Descendants("ProjectReference")
        .Select(r => r.Attribute("Include")!.Value.Split('/', '\\')[^1]["OnboardHeat.".Length..^".csproj".Length]);
}
