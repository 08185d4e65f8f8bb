using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace OnboardHeat.Glance.Guard;

/// <summary>
/// Gives out one code at a time and takes it back once. Wrong codes slow everybody down together, so ten addresses guess no faster than
/// one, and the owner with the right code is never locked out: after the wait it works.
/// </summary>
internal sealed class PairingDesk(TimeProvider time)
{
    /// <summary>Digits of a code: with one try every few seconds for five minutes a guess succeeds once in a million.</summary>
    public const int CodeDigits = 8;

    /// <summary>How long a code works.</summary>
    public static readonly TimeSpan CodeLife = TimeSpan.FromMinutes(5);

    /// <summary>The longest wait between two tries.</summary>
    public static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(8);

    private readonly Lock _lock = new();
    private byte[]? _codeHash;
    private long _codeMadeAt;
    private int _wrong;
    private long _lastWrongAt;

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

    /// <summary>Tries a code. <paramref name="wait"/> is how long to wait before a try counts at all; zero if it counted.</summary>
    public bool Redeem(string code, out TimeSpan wait)
    {
        lock (_lock)
        {
            wait = WaitNow();
            if (wait > TimeSpan.Zero)
            {
                return false;
            }

            var works = _codeHash is not null && time.GetElapsedTime(_codeMadeAt) <= CodeLife
                && CryptographicOperations.FixedTimeEquals(HashOf(code), _codeHash);
            if (works)
            {
                _codeHash = null;
                _wrong = 0;
                return true;
            }

            _wrong = Math.Min(_wrong + 1, 16);
            _lastWrongAt = time.GetTimestamp();
            return false;
        }
    }

    private TimeSpan WaitNow()
    {
        if (_wrong == 0)
        {
            return TimeSpan.Zero;
        }

        var seconds = Math.Min(LongestWait.TotalSeconds, 0.5 * Math.Pow(2, _wrong - 1));
        var left = TimeSpan.FromSeconds(seconds) - time.GetElapsedTime(_lastWrongAt);
        return left > TimeSpan.Zero ? left : TimeSpan.Zero;
    }

    private static byte[] HashOf(string code) => SHA256.HashData(Encoding.UTF8.GetBytes(code));
}
