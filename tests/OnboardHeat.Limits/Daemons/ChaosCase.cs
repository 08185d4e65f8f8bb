using System.Globalization;
using System.Text.Json;
using OnboardHeat.Core;
using OnboardHeat.Core.Scans;
using OnboardHeat.Engine.Keeping;

namespace OnboardHeat.Limits.Daemons;

/// <summary>One daemon through one drive with everything that goes wrong, played in real time.</summary>
internal sealed class ChaosCase : IAsyncDisposable
{
    private const double DueWithinS = 10;

    private static readonly TimeSpan s_tick = TimeSpan.FromMilliseconds(100);

    private readonly ChaosDrive _drive;
    private readonly ChaosPlan _plan;
    private readonly DaemonVan _van;
    private readonly TrialBroker _broker;
    private readonly TinyDisk? _disk;
    private DaemonProcess _daemon = null!;
    private long _began;
    private double? _messageAtS;
    private double _lengthS;
    private double? _killedAtS;
    private double _readyAtS;
    private double? _brokerUpAtS;
    private bool _isHung;
    private bool _isFull;
    private bool _isBrokerDown;

    public ChaosCase(string id, ChaosDrive drive, ChaosPlan plan)
    {
        _drive = drive;
        _plan = plan;
        var port = DaemonVan.FreePort();
        _van = new DaemonVan(id, port, ChaosDrive.Fitted, 2, drive.Van.Tank.VolumeLitres);
        _broker = new TrialBroker(port, Take);
        _disk = plan.FullFromS is null ? null : TinyDisk.TryMount(_van.State);
    }

    /// <summary>Whether the disk was to be full and could not be made so here.</summary>
    public bool HasNoDisk => _plan.FullFromS is not null && _disk is null;

    private double NowS => TimeProvider.System.GetElapsedTime(_began).TotalSeconds;

    /// <summary>
    /// Plays it; gives by how many seconds the message came later than it was due, null where it never came.
    /// </summary>
    public async Task<ChaosResult> PlayAsync(double lengthS)
    {
        new KeptFile(Path.Combine(_van.State, "learnt.onboardheat"), hasSecondCopy: true)
            .Write(new KeptFileContent(1, KeptState.Fresh with { Learnt = _drive.Learnt }));
        _lengthS = lengthS;
        Show(0);
        await _broker.StartAsync();
        _daemon = DaemonProcess.Start(_van);
        if (await _daemon.ReadyAsync() is null)
        {
            return new ChaosResult(null, null, $"did not start: {_daemon.Log}");
        }

        _began = TimeProvider.System.GetTimestamp();
        var next = 1;
        while (_messageAtS is null && NowS < lengthS)
        {
            if (next < _drive.Scans.Count && NowS >= _drive.Scans[next].Elapsed.TotalSeconds)
            {
                Show(next++);
            }

            await HappenAsync();
            await Task.Delay(s_tick, TimeProvider.System);
        }

        return Judge();
    }

    public async ValueTask DisposeAsync()
    {
        if (_isHung)
        {
            _van.Release(_plan.Hang!.Value.Channel);
        }

        _daemon?.Dispose();
        await _broker.DisposeAsync();
        _disk?.Dispose();
        _van.Dispose();
    }

    private void Take(string topic, string payload)
    {
        if (topic == $"onboardheat/{_van.Id}/alarms/coolant-loss" && payload.Length > 0
            && JsonDocument.Parse(payload).RootElement.GetProperty("state").GetString() != "normal")
        {
            _messageAtS ??= NowS;
        }
    }

    private void Show(int index)
    {
        foreach (var channel in _van.Roms.Keys)
        {
            var reading = _drive.Scans[index][channel];
            if (reading.HasValue && !(_isHung && _plan.Hang!.Value.Channel == channel))
            {
                _van.Set(channel, reading.Value);
            }
        }
    }

    private async Task HappenAsync()
    {
        if (_plan.FullFromS < NowS && !_isFull)
        {
            _isFull = true;
            _disk?.Fill();
        }

        if (_plan.Hang is { } hang && (NowS >= hang.FromS && NowS < hang.ToS) != _isHung)
        {
            if (_isHung)
            {
                _van.Release(hang.Channel);
            }
            else
            {
                await _van.HangAsync(hang.Channel);
            }

            _isHung = !_isHung;
        }

        if (_plan.BrokerDown is { } down && (NowS >= down.FromS && NowS < down.ToS) != _isBrokerDown)
        {
            _isBrokerDown = !_isBrokerDown;
            await (_isBrokerDown ? _broker.StopAsync() : _broker.StartAsync());
            _brokerUpAtS = _isBrokerDown ? null : NowS;
        }

        if (_plan.KillAtS < NowS && _killedAtS is null)
        {
            _killedAtS = NowS;
            await _daemon.KillAsync();
            _daemon.Dispose();
            _daemon = DaemonProcess.Start(_van);
            await _daemon.ReadyAsync();
            _readyAtS = NowS;
        }
    }

    private ChaosResult Judge()
    {
        var raisedAtS = _drive.RaisedAtS(AsRead(), out _);
        var dueS = Math.Max(raisedAtS ?? double.PositiveInfinity, Math.Max(_readyAtS, _brokerUpAtS ?? 0));
        var words = string.Create(
            CultureInfo.InvariantCulture,
            $"seed {_drive.Seed}: replay raises at {raisedAtS:0.0}, restarted at {_readyAtS:0.0},"
            + $" broker up at {_brokerUpAtS:0.0}, message at {_messageAtS:0.0}; {_plan}");
        return new ChaosResult(raisedAtS, _messageAtS - dueS, _messageAtS is null ? $"{words}\n{_daemon.Log}" : words);
    }

    /// <summary>The readings as the daemon could take them: what hung is missing, and a restart is a new run.</summary>
    private IEnumerable<(double AtS, Scan Scan)> AsRead()
    {
        foreach (var shown in _drive.Scans)
        {
            var atS = shown.Elapsed.TotalSeconds;
            if (atS > _lengthS - DueWithinS)
            {
                // What is raised so late was not waited for.
                yield break;
            }

            var isAfter = atS >= _readyAtS && _killedAtS is not null;
            if (atS >= _killedAtS && !isAfter)
            {
                continue;
            }

            var scan = shown.Copy();
            scan.Run = isAfter ? 3 : 2;
            scan.Elapsed = TimeSpan.FromSeconds(isAfter ? atS - _readyAtS : atS);
            if (_plan.Hang is { } hang && atS >= hang.FromS && atS < hang.ToS)
            {
                scan[hang.Channel] = Reading.None;
            }

            yield return (atS, scan);
        }
    }
}
