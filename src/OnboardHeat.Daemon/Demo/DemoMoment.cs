using OnboardHeat.Core;
using OnboardHeat.Simulation;

namespace OnboardHeat.Daemon.Demo;

/// <summary>One moment of the demo: what the monitor says beside what is really so.</summary>
/// <param name="Picture">From the monitor.</param>
/// <param name="Truth">From the simulation; only the road line and the closing words use it.</param>
/// <param name="Time">Wall clock in the van.</param>
internal readonly record struct DemoMoment(Picture Picture, Truth Truth, DateTimeOffset Time);
