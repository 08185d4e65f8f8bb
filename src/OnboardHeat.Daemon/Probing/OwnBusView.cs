using OnboardHeat.Core;
using OnboardHeat.Daemon.Running;
using OnboardHeat.Engine.Keeping;
using OnboardHeat.Engine.Options;
using OnboardHeat.Probes.OneWire;

namespace OnboardHeat.Daemon.Probing;

/// <summary>The bus read by the command itself, for want of a daemon.</summary>
internal sealed class OwnBusView : IBusView
{
    private readonly OnboardHeatOptions _options;
    private readonly BusSurvey _survey;
    private readonly KeptFile _file;
    private IReadOnlyList<KeptProbe> _kept;

    public OwnBusView(OnboardHeatOptions options, TimeProvider time)
    {
        _options = options;
        _survey = BusSurvey.OfThisMachine(options.OneWire.Bus, time);
        _file = new KeptFile(KeptFiles.PathIn(options.History.Folder), hasSecondCopy: true);
        _kept = Read().Probes;
    }

    public string Words => "no daemon runs; read by this command";

    /// <summary>What the small file holds; what a fresh van has where there is none that can be read.</summary>
    public KeptFileContent Read() => _file.Read(static _ => { }) ?? new KeptFileContent(0, KeptState.Fresh);

    public async Task<BusSight> LookAsync(CancellationToken cancellationToken)
    {
        var roms = await _survey.ListAsync(cancellationToken).ConfigureAwait(false);
        var seen = roms is null ? null : await _survey.ReadAsync(roms, cancellationToken).ConfigureAwait(false);
        return BusSight.Of(_options, _kept, seen);
    }

    public Task<string?> KeepOffsetAsync(string channel, double offsetKelvin, string reference) =>
        Task.FromResult(Keep(channel, offsetKelvin));

    public void Dispose() => _survey.Dispose();

    private string? Keep(string channel, double offsetKelvin)
    {
        var folder = _options.History.Folder;
        using var instance = InstanceLock.TryTake(folder);
        if (instance is not { Trouble: null })
        {
            return instance is null
                ? $"a daemon holds {folder} and does not answer at {_options.Control.Socket}"
                : $"{folder} cannot be written: {instance.Trouble}";
        }

        try
        {
            var content = Read();
            _kept = Fittings.Learn(Fittings.Keep(_options, content.Probes), channel, offsetKelvin);
            _file.Write(content with { Probes = _kept });
            return null;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return fault.Message;
        }
    }
}
