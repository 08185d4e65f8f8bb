using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using System.Text;

namespace OnboardHeat.Glance.Guard;

/// <summary>
/// Gives out one code at a time and takes it back once. A wrong code makes its address wait, longer each time; nobody
/// waits for another's mistakes, so whoever guesses without end cannot keep the owner out. What guessing yields is
/// bounded by the length of the code, its life and the waits: ten addresses get some 160 tries in five minutes, at one
/// chance in a hundred million each.
/// </summary>
internal sealed class PairingDesk(TimeProvider time)
{
    /// <summary>Digits of a code.</summary>
    public const int CodeDigits = 8;

    /// <summary>
    /// Addresses that are told apart; a van has a handful. All beyond them wait together, so a flood of addresses
    /// guesses no faster.
    /// </summary>
    public const int MostAddresses = 256;

    /// <summary>How long a code works.</summary>
    public static readonly TimeSpan CodeLife = TimeSpan.FromMinutes(5);

    /// <summary>The wait after a first wrong code; it doubles with each further one.</summary>
    public static readonly TimeSpan FirstWait = TimeSpan.FromSeconds(0.5);

    /// <summary>The longest wait between two tries of one address.</summary>
    public static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(30);

    private readonly Lock _lock = new();
    private readonly Dictionary<IPAddress, Tries> _tries = [];
    private byte[]? _codeHash;
    private long _codeMadeAt;

    /// <summary>Makes a new code; the one before stops working.</summary>
    public string NewCode()
    {
        var code = RandomNumberGenerator.GetInt32(100_000_000).ToString("D8", CultureInfo.InvariantCulture);
        lock (_lock)
        {
            _codeHash = HashOf(code);
            _codeMadeAt = time.GetTimestamp();
        }

        return code;
    }

    /// <summary>
    /// Tries a code. <paramref name="wait"/> is how long to wait before a try counts at all; zero if it counted.
    /// </summary>
    public bool Redeem(string code, IPAddress? from, out TimeSpan wait)
    {
        lock (_lock)
        {
            var place = PlaceOf(from ?? IPAddress.None);
            _tries.TryGetValue(place, out var before);
            wait = WaitOf(before);
            if (wait > TimeSpan.Zero)
            {
                return false;
            }

            var works = _codeHash is not null && time.GetElapsedTime(_codeMadeAt) <= CodeLife
                && CryptographicOperations.FixedTimeEquals(HashOf(code), _codeHash);
            if (works)
            {
                _codeHash = null;
                _tries.Remove(place);
                return true;
            }

            _tries[place] = new Tries(Math.Min(before.Wrong + 1, 16), time.GetTimestamp());
            return false;
        }
    }

    private TimeSpan WaitOf(Tries tries)
    {
        if (tries.Wrong == 0)
        {
            return TimeSpan.Zero;
        }

        var wait = TimeSpan.FromTicks(Math.Min(LongestWait.Ticks, FirstWait.Ticks << (tries.Wrong - 1)));
        var left = wait - time.GetElapsedTime(tries.At);
        return left > TimeSpan.Zero ? left : TimeSpan.Zero;
    }

    // One network card can hold as many IPv6 addresses as it likes within its /64: they count as one.
    private IPAddress PlaceOf(IPAddress from)
    {
        var place = from.IsIPv4MappedToIPv6 ? from.MapToIPv4() : from;
        if (place.AddressFamily == System.Net.Sockets.AddressFamily.InterNetworkV6)
        {
            place = new IPAddress([.. place.GetAddressBytes()[..8], 0, 0, 0, 0, 0, 0, 0, 0]);
        }

        if (_tries.ContainsKey(place) || _tries.Count < MostAddresses)
        {
            return place;
        }

        foreach (var old in _tries.Where(t => time.GetElapsedTime(t.Value.At) > CodeLife).Select(t => t.Key).ToArray())
        {
            _tries.Remove(old);
        }

        return _tries.Count < MostAddresses ? place : IPAddress.None;
    }

    private static byte[] HashOf(string code) => SHA256.HashData(Encoding.UTF8.GetBytes(code));

    private readonly record struct Tries(int Wrong, long At);
}
