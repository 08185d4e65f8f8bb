using System.Collections.Concurrent;
using System.Net.Sockets;
using System.Text;

namespace OnboardHeat.Limits.Page;

/// <summary>
/// Sends what no browser of ours would: broken request lines, foreign names, odd paths and queries, bodies that are no
/// JSON or nearly some, with and without a paired phone's secrets. From one seed, so that an odd answer can be asked
/// for again.
/// </summary>
internal sealed class Fuzz(DaemonUnderTrial daemon, (string Cookie, string Token) phone, int seed)
{
    private const int AtOnce = 8;

    // An answer that does not come within this is one to a request that never ends; the daemon has its own patience for
    // those.
    private static readonly TimeSpan s_patience = TimeSpan.FromSeconds(1);

    private readonly ConcurrentDictionary<int, int> _answers = new();

    /// <summary>How many answers there were of each status; 0 stands for none.</summary>
    public async Task<IReadOnlyDictionary<int, int>> RunAsync(int count)
    {
        var requests = new FuzzedRequests(daemon.Address, phone, seed);
        await Parallel.ForAsync(0, AtOnce, async (lane, _) =>
        {
            for (var i = lane; i < count; i += AtOnce)
            {
                _answers.AddOrUpdate(await SendAsync(requests.Make(i)), 1, static (_, n) => n + 1);
            }
        });
        return _answers;
    }

    private async Task<int> SendAsync(byte[] request)
    {
        using var client = new TcpClient();
        using var patience = new CancellationTokenSource(s_patience, TimeProvider.System);
        try
        {
            await client.ConnectAsync(daemon.Address.Host, daemon.Address.Port, patience.Token);
            var stream = client.GetStream();
            await stream.WriteAsync(request, patience.Token);
            var answer = new byte[64];
            var length = await stream.ReadAtLeastAsync(answer, 12, throwOnEndOfStream: false, patience.Token);
            var words = Encoding.ASCII.GetString(answer, 0, length).Split(' ');
            return words.Length > 1 && int.TryParse(words[1].AsSpan(0, Math.Min(3, words[1].Length)), out var status)
                ? status : 0;
        }
        catch (Exception e) when (e is SocketException or IOException or OperationCanceledException)
        {
            return 0;
        }
    }
}
