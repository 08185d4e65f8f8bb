using OnboardHeat.History.Blocks;

namespace OnboardHeat.History.ReadBack;

/// <summary>A block whose checksum fits.</summary>
internal readonly record struct OpenedBlock(BlockHeader Header, ReadOnlyMemory<byte> Payload);
