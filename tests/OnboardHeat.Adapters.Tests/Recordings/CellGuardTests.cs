using OnboardHeat.Engine.Recordings;

namespace OnboardHeat.Adapters.Tests.Recordings;

/// <summary>
/// Source: OWASP, "CSV injection": a cell must not begin with = + - @, a tab or a line break, also not after a
/// separator or quote.
/// </summary>
public sealed class CellGuardTests
{
    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+41", "'+41")]
    [InlineData("-2", "'-2")]
    [InlineData("@sum", "'@sum")]
    [InlineData("  =1+1", "  '=1+1")]
    [InlineData("note:a;=1+1", "\"note:a;'=1+1\"")]
    [InlineData("note:a,@sum", "\"note:a,'@sum\"")]
    [InlineData("note:\"=1+1\"", "\"note:\"\"'=1+1\"\"\"")]
    [InlineData("\t=1", "\"'\t'=1\"")]
    [InlineData("a\n-1", "\"a\n'-1\"")]
    public void TextThatASpreadsheetWouldRun_GetsAnApostrophe(string text, string cell) =>
        Assert.Equal(cell, CellGuard.Cell(text));

    [Theory]
    [InlineData("note:hose renewed - 2 m", "note:hose renewed - 2 m")]
    [InlineData("note:2 = two", "note:2 = two")]
    [InlineData("", "")]
    [InlineData("say \"so\"", "\"say \"\"so\"\"\"")]
    public void OrdinaryText_StaysAsItIs(string text, string cell) => Assert.Equal(cell, CellGuard.Cell(text));
}
