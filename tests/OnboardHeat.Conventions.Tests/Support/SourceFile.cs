using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace OnboardHeat.Conventions.Tests.Support;

/// <summary>One C# file of the house, parsed.</summary>
internal sealed class SourceFile
{
    public SourceFile(string root, string fullPath)
    {
        Path = System.IO.Path.GetRelativePath(root, fullPath);
        Text = File.ReadAllText(fullPath);
        Lines = Text.Split('\n');
        Unit = CSharpSyntaxTree.ParseText(Text, new CSharpParseOptions(LanguageVersion.Preview))
            .GetCompilationUnitRoot();
        Names = Unit.DescendantNodes().OfType<SimpleNameSyntax>()
            .Select(n => n.Identifier.Text).ToHashSet(StringComparer.Ordinal);
    }

    /// <summary>Path from the root of the house.</summary>
    public string Path { get; }

    /// <summary>The project's folder name, for example <c>OnboardHeat.Core</c>.</summary>
    public string Project => Path.Split(System.IO.Path.DirectorySeparatorChar)[1];

    /// <summary>Whether it ships.</summary>
    public bool IsOfSource => Path.StartsWith("src", StringComparison.Ordinal);

    public string Text { get; }

    public string[] Lines { get; }

    public CompilationUnitSyntax Unit { get; }

    /// <summary>Every name that the code mentions; what it declares is not among them.</summary>
    public IReadOnlySet<string> Names { get; }

    /// <summary>Whether a line, counted from zero, lies in a raw text of several lines.</summary>
    public bool IsQuoted(int line) => Unit.DescendantNodes().Where(IsRawText).Any(text =>
        text.GetLocation().GetLineSpan() is var span
        && span.StartLinePosition.Line < line && line < span.EndLinePosition.Line);

    /// <summary>Types that are declared at the top of the file.</summary>
    public IEnumerable<MemberDeclarationSyntax> TopTypes => Unit
        .DescendantNodes(n => n is CompilationUnitSyntax or BaseNamespaceDeclarationSyntax)
        .OfType<MemberDeclarationSyntax>().Where(m => m is BaseTypeDeclarationSyntax or DelegateDeclarationSyntax);

    /// <summary>A place in the file for a message.</summary>
    public string At(SyntaxNode node) =>
        $"{Path}:{node.GetLocation().GetLineSpan().StartLinePosition.Line + 1}";

    private static bool IsRawText(SyntaxNode node) => node switch
    {
        LiteralExpressionSyntax literal =>
            literal.Token.Kind() is SyntaxKind.MultiLineRawStringLiteralToken
                or SyntaxKind.Utf8MultiLineRawStringLiteralToken,
        InterpolatedStringExpressionSyntax text =>
            text.StringStartToken.IsKind(SyntaxKind.InterpolatedMultiLineRawStringStartToken),
        _ => false,
    };
}
