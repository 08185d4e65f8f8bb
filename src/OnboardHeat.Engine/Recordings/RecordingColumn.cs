namespace OnboardHeat.Engine.Recordings;

/// <summary>One column of a recording: what it is, which channel or signal, and its name.</summary>
internal readonly record struct RecordingColumn(RecordingColumnKind Kind, int Index, string Name);
