using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using OnboardHeat.Conventions.Tests.Support;

namespace OnboardHeat.Conventions.Tests;

/// <summary>Sealed and internal by default; names are nouns of the trade.</summary>
public sealed class TypeTests
{
    private static readonly string[] s_emptyNouns = ["Manager", "Helper", "Helpers", "Service", "Utils", "Utility", "Utilities"];

    [Fact]
    public void Classes_AreSealed() => House.AssertNone(
        from file in House.Source
        from type in file.Unit.DescendantNodes().OfType<TypeDeclarationSyntax>()
        where type is ClassDeclarationSyntax or RecordDeclarationSyntax && !type.IsKind(SyntaxKind.RecordStructDeclaration)
        where !type.Modifiers.Any(m => m.Kind() is SyntaxKind.SealedKeyword or SyntaxKind.StaticKeyword or SyntaxKind.AbstractKeyword)
        where !IsBase(type.Identifier.Text)
        select $"{file.At(type)}: {type.Identifier.Text}");

    [Fact]
    public void Structs_AreReadOnly() => House.AssertNone(
        from file in House.Source
        from type in file.Unit.DescendantNodes().OfType<TypeDeclarationSyntax>()
        where type.Kind() is SyntaxKind.StructDeclaration or SyntaxKind.RecordStructDeclaration
        where !type.Modifiers.Any(m => m.Kind() is SyntaxKind.ReadOnlyKeyword or SyntaxKind.RefKeyword)
        select $"{file.At(type)}: {type.Identifier.Text}");

    [Fact]
    public void Names_AreNounsOfTheTrade() => House.AssertNone(
        from file in House.Files
        from type in file.TopTypes.OfType<BaseTypeDeclarationSyntax>()
        from noun in s_emptyNouns
        where type.Identifier.Text.EndsWith(noun, StringComparison.Ordinal)
        select $"{file.At(type)}: {type.Identifier.Text}");

    private static bool IsBase(string name) => House.Source.SelectMany(f => f.Unit.DescendantNodes().OfType<BaseTypeSyntax>())
        .Any(b => b.Type is IdentifierNameSyntax n ? n.Identifier.Text == name : b.Type is GenericNameSyntax g && g.Identifier.Text == name);
}
