using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using OnboardHeat.Conventions.Tests.Support;

namespace OnboardHeat.Conventions.Tests;

/// <summary>An option says unit, range and default, or that it is required, where it is declared.</summary>
public sealed class OptionTests
{
    private static readonly string[] s_saysWhenLeftOut = [
        "default", "required", "left out", "may be empty", "at least one", "Pin of"];

    [Fact]
    public void EveryOption_IsDocumented() => House.AssertNone(
        from option in Options()
        where option.Property.GetLeadingTrivia().ToString() is var doc
            && !doc.Contains("/// <summary>", StringComparison.Ordinal)
        select option.File.At(option.Property));

    [Fact]
    public void EverySingleOption_SaysWhatHoldsWhenItIsLeftOut() => House.AssertNone(
        from option in Options()
        where option.Property.AccessorList!.Accessors.Any(SyntaxKind.SetAccessorDeclaration)
        let doc = option.Property.GetLeadingTrivia().ToString()
        where !s_saysWhenLeftOut.Any(s => doc.Contains(s, StringComparison.Ordinal))
        select $"{option.File.At(option.Property)}: {option.Property.Identifier.Text}");

    private static IEnumerable<(SourceFile File, PropertyDeclarationSyntax Property)> Options() =>
        from file in House.Source
        where file.Path.Contains(Path.Combine("OnboardHeat.Engine", "Options"), StringComparison.Ordinal)
            && file.Path.EndsWith("Options.cs", StringComparison.Ordinal)
        from property in file.Unit.DescendantNodes().OfType<PropertyDeclarationSyntax>()
        select (file, property);
}
