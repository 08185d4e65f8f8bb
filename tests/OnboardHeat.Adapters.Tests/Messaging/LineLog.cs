using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace OnboardHeat.Adapters.Tests.Messaging;

/// <summary>A log that keeps its lines.</summary>
internal sealed class LineLog : ILogger
{
    private readonly ConcurrentQueue<string> _lines = [];

    public IReadOnlyCollection<string> Lines => _lines;

    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull => null;

    public bool IsEnabled(LogLevel logLevel) => true;

    public void Log<TState>(
        LogLevel logLevel, EventId eventId, TState state, Exception? exception,
        Func<TState, Exception?, string> formatter) =>
        _lines.Enqueue(formatter(state, exception));
}
