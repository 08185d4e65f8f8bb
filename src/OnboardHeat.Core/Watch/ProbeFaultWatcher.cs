using OnboardHeat.Core.Scans;
using OnboardHeat.Core.Screening;

namespace OnboardHeat.Core.Watch;

/// <summary>
/// Tells a probe that is gone, stuck, implausible, loose or exchanged: one alarm a channel, or a single one without a
/// subject when the whole bus has gone. A single bad reading, or a second without a bus while the engine cranks, is
/// nobody's business.
/// </summary>
internal sealed class ProbeFaultWatcher : IWatcher
{
    // Faults that screening reports only after minutes of evidence need no further wait.
    private const double SettledDelayS = 0;

    // A line that fell alone may be a slug of cold coolant: half a minute shows whether it stays down.
    private const double LooseDelayS = 30;

    private readonly Channel[] _channels;
    private readonly AlarmPoint[] _points;
    private readonly AlarmPoint _bus;
    private readonly int _onBus;

    public ProbeFaultWatcher(VanDescription van, AlarmBoard board)
    {
        _channels = [.. Channels.All.ToArray().Where(van.Fitted.Has)];
        _points = [.. _channels.Select(c => board.Point(AlarmKind.ProbeFault, Channels.NameOf(c)))];
        _bus = board.Point(AlarmKind.ProbeFault);
        _onBus = _channels.Count(IsOnBus);
    }

    public string Name => _bus.Definition.Name;

    public bool? CanJudge => _channels.Length > 0 ? true : null;

    public void Observe(WatchInput input)
    {
        var elapsedS = input.Scan.ElapsedS;
        var isBusDown = IsBusDown(input.Scan);
        if (_bus.Observe(isBusDown, elapsedS))
        {
            _bus.Say(
                $"none of the {_onBus} probes on the bus has given a reading for {_bus.Definition.OnDelayS:0} s",
                ProbeFaultWords.BusToDo);
        }

        for (var i = 0; i < _channels.Length; i++)
        {
            var fault = input.Scan[_channels[i]].Fault;
            var point = _points[i];

            // What the bus has taken with it is told once; what was told before goes on standing.
            var holds = fault != ReadingFault.None && (point.IsPresent || !(isBusDown && IsOnBus(_channels[i])));
            if (point.Observe(holds, elapsedS, OnDelayS(fault), point.Definition.OffDelayS))
            {
                point.Say(ProbeFaultWords.Because(_channels[i], input.Scan), ProbeFaultWords.WhatToDo(fault));
            }
        }
    }

    private bool IsBusDown(ScreenedScan scan)
    {
        if (_onBus < 2)
        {
            return false;
        }

        foreach (var channel in _channels)
        {
            if (IsOnBus(channel)
                && scan[channel].Fault is not (ReadingFault.Missing or ReadingFault.Stale or ReadingFault.BadCrc
                or ReadingFault.AllZero or ReadingFault.PowerOn))
            {
                return false;
            }
        }

        return true;
    }

    private static double OnDelayS(ReadingFault fault) => fault switch
    {
        ReadingFault.Swapped or ReadingFault.Stuck => SettledDelayS,
        ReadingFault.Loose => LooseDelayS,
        _ => AlarmTable.Of(AlarmKind.ProbeFault).OnDelayS,
    };

    private static bool IsOnBus(Channel channel) => channel != Channel.EngineCoolant;
}
