using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using OnboardHeat.Conventions.Tests.Support;
using Xunit.Abstractions;

namespace OnboardHeat.Conventions.Tests;

/// <summary>
/// Each row of the failure table (hardware-notes/failures.md) names the test that breaks its element on purpose.
/// </summary>
public sealed partial class FailureTableTests(ITestOutputHelper output)
{
    /// <summary>From the issue: some 25 elements.</summary>
    private const int RowsLeast = 25;

    private static readonly string[] s_rows = [
        .. File.ReadAllLines(Path.Combine(House.Root, "hardware-notes", "failures.md"))
        .Where(line => line.StartsWith("| ", StringComparison.Ordinal)).Skip(2)];

    [Fact]
    public void EveryRow_NamesATestThatThereIs()
    {
        var missing = s_rows.Where(row => !HasTest(row)).ToList();
        output.WriteLine(
            $"failure table: {s_rows.Length} rows, {s_rows.Length - missing.Count} with their fault-injection test");
        House.AssertNone(missing);
        Assert.True(s_rows.Length >= RowsLeast, $"{s_rows.Length} rows, {RowsLeast} at least");
    }

    [Fact]
    public void EveryFailureTest_HasItsRow() => House.AssertNone(
        from file in House.Files
        where file.Path.Contains(
            $"{Path.DirectorySeparatorChar}Failures{Path.DirectorySeparatorChar}", StringComparison.Ordinal)
        from method in TestsIn(file)
        where !s_rows.Any(row => row.Contains($".{method.Identifier.Text}", StringComparison.Ordinal))
        select $"{file.At(method)}: {method.Identifier.Text} is in no row of the failure table");

    private static bool HasTest(string row)
    {
        if (TestName().Match(row) is not { Success: true } named)
        {
            return false;
        }

        return House.Files.Any(file => Path.GetFileNameWithoutExtension(file.Path) == named.Groups["class"].Value
            && TestsIn(file).Any(method => method.Identifier.Text == named.Groups["method"].Value
                && (!named.Groups["case"].Success || HasCase(method, named.Groups["case"].Value))));
    }

    private static bool HasCase(MethodDeclarationSyntax method, string value) => method.AttributeLists
        .SelectMany(list => list.Attributes)
        .Any(attribute => attribute.Name.ToString() == "InlineData"
            && attribute.ArgumentList!.ToString().Contains($"\"{value}\"", StringComparison.Ordinal));

    private static IEnumerable<MethodDeclarationSyntax> TestsIn(SourceFile file) =>
        file.Unit.DescendantNodes().OfType<MethodDeclarationSyntax>()
            .Where(
                m => m.AttributeLists.SelectMany(l => l.Attributes).Any(a => a.Name.ToString() is "Fact" or "Theory"));

    [GeneratedRegex(@"`(?<class>\w+)\.(?<method>\w+)(\((?<case>\w+)\))?` \|$")]
    private static partial Regex TestName();
}
