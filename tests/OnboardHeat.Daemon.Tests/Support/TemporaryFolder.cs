namespace OnboardHeat.Daemon.Tests.Support;

/// <summary>A folder of a test's own that goes with the test.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("onboardheat-test-").FullName;

    /// <summary>The full path of a file in the folder.</summary>
    public string this[string name] => System.IO.Path.Combine(Path, name);

    /// <summary>Writes a text file (UTF-8, no byte-order mark) and gives its path.</summary>
    public string Write(string name, string text)
    {
        File.WriteAllText(this[name], text);
        return this[name];
    }

    /// <summary>Writes bytes and gives their path.</summary>
    public string Write(string name, byte[] bytes)
    {
        File.WriteAllBytes(this[name], bytes);
        return this[name];
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
