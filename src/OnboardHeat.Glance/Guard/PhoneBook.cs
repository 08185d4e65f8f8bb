using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;

namespace OnboardHeat.Glance.Guard;

/// <summary>
/// The phones that are known, in a small file of their own beside what was learnt (mode 0600, written beside and
/// renamed).
/// </summary>
internal sealed class PhoneBook
{
    /// <summary>More phones than a van has; the oldest goes when one more comes.</summary>
    public const int MostPhones = 20;

    private readonly string? _path;
    private readonly Lock _writing = new();
    private ImmutableArray<Phone> _phones = [];

    /// <summary>Reads the book; a missing or unreadable one is an empty one, and everybody pairs anew.</summary>
    public PhoneBook(string? path)
    {
        _path = path;
        if (path is null || !File.Exists(path))
        {
            return;
        }

        try
        {
            _phones = [.. JsonSerializer.Deserialize(File.ReadAllBytes(path), GuardJson.Default.PhoneArray) ?? []];
        }
        catch (Exception e) when (e is JsonException or IOException or UnauthorizedAccessException)
        {
            _phones = [];
        }
    }

    /// <summary>The phones known now.</summary>
    public IReadOnlyList<Phone> All => _phones;

    /// <summary>
    /// Why the book could not be written last time, in words; null when it could. A phone that is not written down is
    /// known until the daemon ends: a full card must not keep anybody from silencing an alarm.
    /// </summary>
    public string? Trouble { get; private set; }

    /// <summary>
    /// Makes a phone known and gives its two secrets: the cookie, and the token that its page sends with actions.
    /// </summary>
    public (Phone Phone, string Cookie, string Token) Add(string name, DateTimeOffset utc)
    {
        var (cookie, token) = (Secret(), Secret());
        var phone = new Phone(
            Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(3)), name, HashOf(cookie), HashOf(token), utc);
        ImmutableInterlocked.Update(ref _phones, (all, added) => [.. all.Add(added).TakeLast(MostPhones)], phone);
        Write();
        return (phone, cookie, token);
    }

    /// <summary>Forgets one phone, or all for an empty id. The number forgotten.</summary>
    public int Remove(string id)
    {
        var before = _phones.Length;
        ImmutableInterlocked.Update(
            ref _phones, (all, gone) => gone.Length == 0 ? [] : all.RemoveAll(p => p.Id == gone), id);
        Write();
        return before - _phones.Length;
    }

    /// <summary>The phone that holds this cookie.</summary>
    public Phone? ByCookie(string? cookie)
    {
        if (string.IsNullOrEmpty(cookie))
        {
            return null;
        }

        var hash = HashOf(cookie);
        return _phones.FirstOrDefault(p => Same(p.CookieHash, hash));
    }

    /// <summary>Whether the token is this phone's.</summary>
    public static bool Owns(Phone phone, string? token) =>
        !string.IsNullOrEmpty(token) && Same(phone.TokenHash, HashOf(token));

    private static bool Same(string a, string b) =>
        CryptographicOperations.FixedTimeEquals(Encoding.ASCII.GetBytes(a), Encoding.ASCII.GetBytes(b));

    private static string Secret() => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(32));

    private static string HashOf(string secret) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));

    private void Write()
    {
        if (_path is null)
        {
            return;
        }

        lock (_writing)
        {
            try
            {
                Write(_path);
                Trouble = null;
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                Trouble = e.Message;
            }
        }
    }

    private void Write(string path)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        var beside = path + ".new";
        var options = new FileStreamOptions
        {
            Mode = FileMode.Create,
            Access = FileAccess.Write,
            UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite,
        };
        using (var file = new FileStream(beside, options))
        {
            JsonSerializer.Serialize(file, [.. _phones], GuardJson.Default.PhoneArray);
            file.Flush(flushToDisk: true);
        }

        File.Move(beside, path, overwrite: true);
    }
}
