using Microsoft.CodeAnalysis.CSharp.Syntax;
using OnboardHeat.Conventions.Tests.Support;

namespace OnboardHeat.Conventions.Tests;

/// <summary>A test claims something, can fail, and runs.</summary>
public sealed class TestTests
{
    /// <summary>What can make a test fail: an assertion, a demand on a double, or a property that is sampled.</summary>
    private static readonly string[] s_verdicts = ["Assert", "Received", "Sample", "Expect", "Throws"];

    [Fact]
    public void TestNames_StateAClaim() => House.AssertNone(
        from test in Tests()
        where !test.Method.Identifier.Text.Contains('_', StringComparison.Ordinal)
        select $"{test.File.At(test.Method)}: {test.Method.Identifier.Text}");

    [Fact]
    public void Tests_CanFail() => House.AssertNone(
        from test in Tests()
        where !CanFail(test.Method, test.File)
        select $"{test.File.At(test.Method)}: {test.Method.Identifier.Text}");

    [Fact]
    public void Tests_AreNotSkipped() => House.AssertNone(
        from file in House.Files
        from argument in file.Unit.DescendantNodes().OfType<AttributeArgumentSyntax>()
        where argument.NameEquals?.Name.Identifier.Text == "Skip"
        select file.At(argument));

    /// <summary>Directly, or through a method of the same file whose name does not say so.</summary>
    private static bool CanFail(MethodDeclarationSyntax method, SourceFile file)
    {
        var called = Names(method).ToHashSet();
        return called.Any(IsVerdict) || file.Unit.DescendantNodes().OfType<MethodDeclarationSyntax>()
            .Any(m => called.Contains(m.Identifier.Text) && m != method && Names(m).Any(IsVerdict));
    }

    private static bool IsVerdict(string name) => s_verdicts.Any(v => name.StartsWith(v, StringComparison.Ordinal));

    private static IEnumerable<string> Names(MethodDeclarationSyntax method) =>
        method.DescendantNodes().OfType<SimpleNameSyntax>().Select(n => n.Identifier.Text);

    private static IEnumerable<(SourceFile File, MethodDeclarationSyntax Method)> Tests() =>
        from file in House.Files
        where !file.IsOfSource
        from method in file.Unit.DescendantNodes().OfType<MethodDeclarationSyntax>()
        where method.AttributeLists.SelectMany(l => l.Attributes).Any(a => a.Name.ToString() is "Fact" or "Theory")
        select (file, method);
}
