using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using OnboardHeat.Conventions.Tests.Support;

namespace OnboardHeat.Conventions.Tests;

/// <summary>What a file of this house looks like.</summary>
public sealed class FileTests
{
    private const int FileMaxLines = 400;
    private const int MethodMaxLines = 60;

    private const int LineMaxColumns = 120;

    [Fact]
    public void Files_AreShort() => House.AssertNone(
        from file in House.Files
        where file.Lines.Length > FileMaxLines
        select $"{file.Path}: {file.Lines.Length} lines, {FileMaxLines} at most");

    [Fact]
    public void Methods_FitOnAScreen() => House.AssertNone(
        from file in House.Files
        from method in file.Unit.DescendantNodes().OfType<BaseMethodDeclarationSyntax>()
        let span = method.GetLocation().GetLineSpan()
        let lines = span.EndLinePosition.Line - span.StartLinePosition.Line + 1
        where lines > MethodMaxLines
        select $"{file.At(method)}: {lines} lines, {MethodMaxLines} at most");

    /// <summary>A text quoted as it stands over several lines keeps its own width.</summary>
    [Fact]
    public void Lines_AreNotWide() => House.AssertNone(
        from file in House.Files
        from line in file.Lines.Index()
        where line.Item.Length > LineMaxColumns && !file.IsQuoted(line.Index)
        select $"{file.Path}:{line.Index + 1}: {line.Item.Length} columns, {LineMaxColumns} at most");

    [Fact]
    public void File_HoldsOneTypeOfItsName() => House.AssertNone(
        from file in House.Files
        let names = file.TopTypes.Select(NameOf).ToList()
        where names.Count > 1
            || (names.Count == 1 && names[0] != Path.GetFileNameWithoutExtension(file.Path).Split('.')[0])
        select $"{file.Path}: {string.Join(", ", names)}");

    [Fact]
    public void File_HasNoRegion() => House.AssertNone(
        from file in House.Files
        where file.Unit.DescendantTrivia().Any(t => t.IsKind(SyntaxKind.RegionDirectiveTrivia))
        select file.Path);

    private static string NameOf(MemberDeclarationSyntax type) => type is DelegateDeclarationSyntax d
        ? d.Identifier.Text
        : ((BaseTypeDeclarationSyntax)type).Identifier.Text;
}
