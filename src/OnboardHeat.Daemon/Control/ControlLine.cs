using System.Net.Sockets;

namespace OnboardHeat.Daemon.Control;

/// <summary>One line of a socket, bounded: whoever sends more, or nothing at all, is cut off.</summary>
internal static class ControlLine
{
    /// <summary>A question is a few words.</summary>
    public const int QuestionBytesMax = 4096;

    /// <summary>An answer is a page of text at most.</summary>
    public const int AnswerBytesMax = 256 * 1024;

    /// <summary>Reads up to a line feed; null when the other side closes early or sends too much.</summary>
    public static async Task<byte[]?> ReadAsync(Socket socket, int bytesMax, CancellationToken cancellationToken)
    {
        var line = new MemoryStream();
        var buffer = new byte[4096];
        while (line.Length <= bytesMax)
        {
            var count = await socket.ReceiveAsync(buffer, cancellationToken).ConfigureAwait(false);
            var end = buffer.AsSpan(0, count).IndexOf((byte)'\n');
            if (end >= 0)
            {
                line.Write(buffer, 0, end);
                return line.Length <= bytesMax ? line.ToArray() : null;
            }

            if (count == 0)
            {
                return null;
            }

            line.Write(buffer, 0, count);
        }

        return null;
    }

    /// <summary>
    /// Reads up to a line feed and not a byte further, because something other than a line may follow.
    /// </summary>
    public static async Task<byte[]?> ReadExactAsync(Socket socket, int bytesMax, CancellationToken cancellationToken)
    {
        var line = new MemoryStream();
        var next = new byte[1];
        while (line.Length <= bytesMax && await socket.ReceiveAsync(next, cancellationToken).ConfigureAwait(false) == 1)
        {
            if (next[0] == (byte)'\n')
            {
                return line.ToArray();
            }

            line.WriteByte(next[0]);
        }

        return null;
    }

    /// <summary>Sends a line.</summary>
    public static async Task WriteAsync(Socket socket, byte[] json, CancellationToken cancellationToken)
    {
        byte[] line = [.. json, (byte)'\n'];
        for (var sent = 0; sent < line.Length;)
        {
            sent += await socket.SendAsync(line.AsMemory(sent), cancellationToken).ConfigureAwait(false);
        }
    }
}
