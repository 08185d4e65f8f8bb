using System.Reflection;
using OnboardHeat.Core.Quantities;
using OnboardHeat.Conventions.Tests.Support;

namespace OnboardHeat.Conventions.Tests;

/// <summary>A public number of the core says its unit, last in its name.</summary>
public sealed class UnitTests
{
    private static readonly string[] s_units =
    [
        "Celsius", "Kelvin", "KPerMin", "KPerS", "K", "W", "Watts", "WPerK", "J", "JPerK", "JPerKgK", "JPerLK", "KWh",
        "Litres", "LitresPerMinute",
        "KgPerM3", "KgPerLitre", "KgPerS", "Kg", "S", "Minutes", "Hours", "Days", "Share", "Fraction", "Bar", "M2", "M",
        "PerK", "Nats",
    ];

    /// <summary>Names without a unit, and why.</summary>
    private static readonly Dictionary<string, string> s_exceptions = new()
    {
        ["Estimate.Value"] = "the unit is that of the figure the estimate is of",
        ["Estimate.Deviation"] = "the same",
        ["Estimate.Low"] = "the same",
        ["Estimate.High"] = "the same",
        ["Estimate.NinetyPercent"] = "a factor between deviations, no quantity",
        ["Forecast.ShowerMinutesLow"] = "spelled as in every line, topic and page; Low and High say which end",
        ["Forecast.ShowerMinutesHigh"] = "the same",
        ["Forecast.DriveMinutesNeeded"] = "spelled as on the page",
        ["Reading.Value"] = "degrees Celsius by the definition of a channel",
        ["ScreenedReading.Value"] = "the same",
    };

    private static readonly Type[] s_unitTypes = [
        typeof(Celsius), typeof(KelvinDelta), typeof(Joules), typeof(Litres), typeof(Watts)];

    [Fact]
    public void PublicNumbersOfTheCore_SayTheirUnit() => House.AssertNone(
        from type in typeof(Core.Monitor).Assembly.GetExportedTypes()
        where !s_unitTypes.Contains(type)
        from member in Numbers(type)
        let name = $"{type.Name.Split('`')[0]}.{member}"
        where !s_exceptions.ContainsKey(name) && !s_units.Any(u => EndsWithUnit(member, u))
        select name);

    [Fact]
    public void ExceptionsFromTheRule_AreStillThere() => House.AssertNone(
        from name in s_exceptions.Keys
        let parts = name.Split('.')
        where !typeof(Core.Monitor).Assembly.GetExportedTypes()
            .Any(t => t.Name == parts[0] && Numbers(t).Contains(parts[1]))
        select name);

    private static bool EndsWithUnit(string name, string unit)
    {
        if (name.Equals(unit, StringComparison.OrdinalIgnoreCase))
        {
            return true;
        }

        // The letter before must end a word: 'LossW' ends in W, 'WINDOW' does not.
        return name.EndsWith(unit, StringComparison.Ordinal) && name.Length > unit.Length
            && (char.IsLower(name[^(unit.Length + 1)]) || char.IsDigit(name[^(unit.Length + 1)]) || unit.Length > 1);
    }

    private static IEnumerable<string> Numbers(Type type)
    {
        const BindingFlags own =
            BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        var properties = type.GetProperties(own)
            .Where(p => IsNumber(p.PropertyType) && p.GetIndexParameters().Length == 0).Select(p => p.Name);
        var fields = type.GetFields(own).Where(f => IsNumber(f.FieldType)).Select(f => f.Name);
        var parameters = type.GetConstructors(own).Cast<MethodBase>()
            .Concat(type.GetMethods(own).Where(m => !m.IsSpecialName))
            .Where(m => m.GetCustomAttribute<System.Runtime.CompilerServices.CompilerGeneratedAttribute>() is null)
            .SelectMany(m => m.GetParameters()).Where(p => IsNumber(p.ParameterType) && p.Name is not null)
            .Select(p => p.Name!);
        return properties.Concat(fields).Concat(parameters).Distinct();
    }

    private static bool IsNumber(Type type)
    {
        var bare = type.IsByRef ? type.GetElementType()! : type;
        bare = Nullable.GetUnderlyingType(bare) ?? bare;
        return bare == typeof(double) || bare == typeof(float) || bare == typeof(Estimate);
    }
}
