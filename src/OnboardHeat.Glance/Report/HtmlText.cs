using System.Security;

namespace OnboardHeat.Glance.Report;

/// <summary>
/// Anything that people or the record say, as text of a page: it can neither end an element or an attribute nor begin
/// one.
/// </summary>
internal static class HtmlText
{
    // Encodes what means something to a page and nothing else: degree signs and letters of any language stand as they
    // are.
    public static string Of(string text) => SecurityElement.Escape(text) ?? "";
}
