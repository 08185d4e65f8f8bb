using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using OnboardHeat.Conventions.Tests.Support;

namespace OnboardHeat.Conventions.Tests;

/// <summary>Sealed and internal by default; names are nouns of the trade.</summary>
public sealed class TypeTests
{
    private static readonly string[] s_emptyNouns = [
        "Manager", "Helper", "Helpers", "Service", "Utils", "Utility", "Utilities"];

    [Fact]
    public void Classes_AreSealed() => House.AssertNone(
        from file in House.Source
        from type in file.Unit.DescendantNodes().OfType<TypeDeclarationSyntax>()
        where type is ClassDeclarationSyntax or RecordDeclarationSyntax
            && !type.IsKind(SyntaxKind.RecordStructDeclaration)
        where !type.Modifiers.Any(
            m => m.Kind() is SyntaxKind.SealedKeyword or SyntaxKind.StaticKeyword or SyntaxKind.AbstractKeyword)
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

    /// <summary>
    /// Internal by default: a public type is named in another project of the source, or in the public face of a type of
    /// its own project (a class of extensions by the names of its methods). Tests see what is internal and are no
    /// reason.
    /// </summary>
    [Fact]
    public void PublicTypes_AreUsedOutsideTheirProject() => House.AssertNone(
        from file in House.Source
        from type in file.TopTypes.OfType<BaseTypeDeclarationSyntax>()
        where type.Modifiers.Any(SyntaxKind.PublicKeyword)
        where !NamesOf(type).Any(name => IsUsedOutside(name, file.Project))
        select $"{file.At(type)}: {type.Identifier.Text} is public and used nowhere else");

    private static bool IsBase(string name) =>
        House.Source.SelectMany(f => f.Unit.DescendantNodes().OfType<BaseTypeSyntax>())
        .Any(b => b.Type is IdentifierNameSyntax n ? n.Identifier.Text == name
        : b.Type is GenericNameSyntax g && g.Identifier.Text == name);

    private static IEnumerable<string> NamesOf(BaseTypeDeclarationSyntax type) => type.DescendantNodes()
        .OfType<MethodDeclarationSyntax>()
        .Where(m => m.ParameterList.Parameters.FirstOrDefault() is { } first
        && first.Modifiers.Any(SyntaxKind.ThisKeyword))
        .Select(m => m.Identifier.Text).Prepend(type.Identifier.Text);

    private static bool IsUsedOutside(string name, string project) =>
        House.Source.Any(f => f.Project != project && f.Names.Contains(name))
        || House.Source.Any(f => f.Project == project && IsInSignature(f, name));

    private static bool IsInSignature(SourceFile file, string name) => file.TopTypes.OfType<TypeDeclarationSyntax>()
        .Where(t => t.Modifiers.Any(SyntaxKind.PublicKeyword) && t.Identifier.Text != name)
        .SelectMany(t => t.Members.Where(m => m.Modifiers.Any(SyntaxKind.PublicKeyword)).SelectMany(Signature)
            .Concat(t.ParameterList?.DescendantNodes() ?? []).Concat(t.BaseList?.DescendantNodes() ?? []))
        .OfType<SimpleNameSyntax>().Any(n => n.Identifier.Text == name);

    private static IEnumerable<SyntaxNode> Signature(MemberDeclarationSyntax member) => member switch
    {
        MethodDeclarationSyntax m => m.ReturnType.DescendantNodesAndSelf().Concat(m.ParameterList.DescendantNodes()),
        ConstructorDeclarationSyntax c => c.ParameterList.DescendantNodes(),
        PropertyDeclarationSyntax p => p.Type.DescendantNodesAndSelf(),
        OperatorDeclarationSyntax o => o.ReturnType.DescendantNodesAndSelf().Concat(o.ParameterList.DescendantNodes()),
        IndexerDeclarationSyntax i => i.Type.DescendantNodesAndSelf(),
        FieldDeclarationSyntax f => f.Declaration.Type.DescendantNodesAndSelf(),
        _ => [],
    };
}
