using System.Globalization;

namespace OnboardHeat.Limits.Page;

/// <summary>One live page: reads the event stream and keeps when each picture's scan began.</summary>
internal sealed class LivePage : IAsyncDisposable
{
    private const string Mark = "\"elapsedS\":";

    private readonly HttpClient _client = new();
    private readonly CancellationTokenSource _ending = new();
    private readonly List<double> _elapsedS = [];
    private readonly Task _reading;

    private LivePage(Uri address) => _reading = ReadAsync(new Uri(address, "api/v1/live"));

    /// <summary>Pictures heard so far.</summary>
    public int Count
    {
        get
        {
            lock (_elapsedS)
            {
                return _elapsedS.Count;
            }
        }
    }

    public static LivePage Open(Uri address) => new(address);

    /// <summary>Waits for so many more pictures.</summary>
    public async Task HeardAsync(int pictures)
    {
        var wanted = Count + pictures;
        while (Count < wanted)
        {
            if (_reading.IsCompleted)
            {
                await _reading;
                throw new EndOfStreamException("The live page ended.");
            }

            await Task.Delay(TimeSpan.FromMilliseconds(20), TimeProvider.System, CancellationToken.None);
        }
    }

    /// <summary>
    /// Seconds by which the latest scan of all was later after the one before it than the period says.
    /// </summary>
    public double LatestByS(double periodS)
    {
        lock (_elapsedS)
        {
            return _elapsedS.Zip(_elapsedS.Skip(1), (a, b) => b - a - periodS).Max();
        }
    }

    public async ValueTask DisposeAsync()
    {
        await _ending.CancelAsync();
        await _reading.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        _client.Dispose();
        _ending.Dispose();
    }

    private async Task ReadAsync(Uri live)
    {
        using var reader = new StreamReader(await _client.GetStreamAsync(live, _ending.Token));
        while (await reader.ReadLineAsync(_ending.Token) is { } line)
        {
            var at = line.StartsWith("data: {\"v\"", StringComparison.Ordinal)
                ? line.IndexOf(Mark, StringComparison.Ordinal) : -1;
            if (at >= 0)
            {
                var end = line.IndexOf(',', at);
                lock (_elapsedS)
                {
                    _elapsedS.Add(double.Parse(
                        line.AsSpan(at + Mark.Length, end - at - Mark.Length), CultureInfo.InvariantCulture));
                }
            }
        }
    }
}
