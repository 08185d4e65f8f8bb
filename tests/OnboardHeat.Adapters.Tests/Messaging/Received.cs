namespace OnboardHeat.Adapters.Tests.Messaging;

/// <summary>One message as mosquitto_sub printed it.</summary>
public sealed record Received(
    string Topic, string Payload, bool Retain, int Qos, string ContentType, string PayloadFormat, string Expiry,
    string ResponseTopic, string Correlation);
