namespace OnboardHeat.Engine.Ports;

/// <summary>One file of the record.</summary>
/// <param name="Name">File name without its folder.</param>
/// <param name="Label">The month as <c>2026-05</c>, or <c>undated</c>.</param>
/// <param name="Bytes">Size on disk.</param>
/// <param name="IsOpen">Whether the daemon writes to it.</param>
/// <param name="Note">Empty when it is sound; else what is wrong with it, in words.</param>
public sealed record RecordedMonth(string Name, string Label, long Bytes, bool IsOpen, string Note);
