using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using OnboardHeat.Core;

namespace OnboardHeat.Engine.Keeping;

/// <summary>
/// The small file that outlives a power cut: what was learnt, and where the alarms stood. A first line carries form,
/// length and checksum of the JSON after it. It is written beside, forced to the disk and renamed over the old one;
/// with a second copy the old one stays until the new one is there, so that one damaged copy costs minutes and not the
/// winter's learning.
/// </summary>
public sealed class KeptFile(string path, bool hasSecondCopy)
{
    /// <summary>First word of the file: name and version of its form.</summary>
    private const string Form = "onboardheat-kept-1";

    /// <summary>A thousand times what a kept state takes.</summary>
    private const long MaxBytes = 8 << 20;

    private string SecondPath => path + ".before";

    /// <summary>
    /// Reads the newest sound copy. What is damaged is told in a line each; nothing sound gives null.
    /// </summary>
    public KeptFileContent? Read(Action<string> tell)
    {
        ArgumentNullException.ThrowIfNull(tell);
        var content = ReadCopy(path, tell);
        return content is null && hasSecondCopy ? ReadCopy(SecondPath, tell) : content;
    }

    /// <summary>Writes the file anew. It is on the disk when this returns.</summary>
    /// <exception cref="IOException">The disk did not take it; the old copy stands.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be written to.</exception>
    public void Write(KeptFileContent content)
    {
        var json = JsonSerializer.SerializeToUtf8Bytes(content, KeptJsonContext.Default.KeptFileContent);
        var fresh = path + ".new";
        using (var stream = new FileStream(fresh, FileMode.Create, FileAccess.Write, FileShare.None, bufferSize: 0))
        {
            stream.Write(Encoding.ASCII.GetBytes($"{Form} {json.Length} {Checksum(json)}\n"));
            stream.Write(json);
            RandomAccess.FlushToDisk(stream.SafeFileHandle);
        }

        if (hasSecondCopy && File.Exists(path))
        {
            File.Move(path, SecondPath, overwrite: true);
        }

        File.Move(fresh, path, overwrite: true);
        Folder.FlushToDisk(Path.GetDirectoryName(Path.GetFullPath(path))!);
    }

    private static KeptFileContent? ReadCopy(string copy, Action<string> tell)
    {
        try
        {
            if (!File.Exists(copy))
            {
                return null;
            }

            if (new FileInfo(copy).Length > MaxBytes)
            {
                tell($"{copy}: too long for what is kept of a van; set aside as damaged");
                return null;
            }

            return Parse(File.ReadAllBytes(copy)) ?? throw new InvalidDataException("its checksum does not fit");
        }
        catch (Exception e) when (
            e is IOException or UnauthorizedAccessException or JsonException
                or InvalidDataException or NotSupportedException)
        {
            tell($"{copy}: damaged, what was learnt in it is lost: {e.Message.ReplaceLineEndings(" ")}");
            return null;
        }
    }

    private static KeptFileContent? Parse(ReadOnlySpan<byte> bytes)
    {
        var end = bytes.IndexOf((byte)'\n');
        if (end < 0)
        {
            return null;
        }

        var json = bytes[(end + 1)..];
        var isSound = Encoding.ASCII.GetString(bytes[..end]) == $"{Form} {json.Length} {Checksum(json)}";
        return isSound ? JsonSerializer.Deserialize(json, KeptJsonContext.Default.KeptFileContent) : null;
    }

    private static string Checksum(ReadOnlySpan<byte> json) =>
        Convert.ToHexStringLower(SHA256.HashData(json).AsSpan(0, 8));
}
