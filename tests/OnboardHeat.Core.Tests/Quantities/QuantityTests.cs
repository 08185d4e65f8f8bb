using CsCheck;
using OnboardHeat.Core.Quantities;

namespace OnboardHeat.Core.Tests.Quantities;

public sealed class QuantityTests
{
    private static readonly Gen<double> s_value = Gen.Double[-1e6, 1e6];

    [Fact]
    public void DifferenceOfTwoPoints_LeadsFromOneToTheOther() =>
        Gen.Select(s_value, s_value).Sample((a, b) =>
            Math.Abs((new Celsius(a) + (new Celsius(b) - new Celsius(a))).Value - b) <= 1e-9 * (1
                + Math.Abs(a) + Math.Abs(b)));

    [Fact]
    public void Fall_IsTheOppositeOfARise() =>
        Gen.Select(s_value, s_value).Sample((point, rise) =>
            (new Celsius(point) - new KelvinDelta(rise)).Value == (new Celsius(point) + -new KelvinDelta(rise)).Value);

    [Fact]
    public void Ordering_IsThatOfTheNumbers() =>
        Gen.Select(s_value, s_value).Sample((a, b) =>
            new Celsius(a) < new Celsius(b) == a < b && new Joules(a) >= new Joules(b) == a >= b
            && Math.Sign(new Watts(a).CompareTo(new Watts(b))) == Math.Sign(a.CompareTo(b))
            && Math.Sign(new Litres(a).CompareTo(new Litres(b))) == Math.Sign(a.CompareTo(b)));

    // 1 kWh = 3.6 MJ exactly, by definition of the hour.
    [Fact]
    public void KilowattHour_Is3600000Joules() => Assert.Equal(1.0, new Joules(3.6e6).KilowattHours);

    // The container's culture does not matter: figures are read by people and machines alike with a decimal point.
    [Theory]
    [InlineData(61.26, "61.3 °C")]
    [InlineData(-0.04, "-0.0 °C")]
    [InlineData(1234.5, "1234.5 °C")]
    public void Celsius_IsWrittenWithAPointAndItsUnit(double value, string written) =>
        Assert.Equal(written, new Celsius(value).ToString());

    // Table of the normal distribution: 5 % lie above 1.645 standard deviations.
    [Fact]
    public void NinetyPercentRange_IsSymmetricAt1645Deviations()
    {
        var estimate = new Estimate(50, 2, TimeSpan.Zero, 3);
        Assert.Equal((46.71, 53.29), (Math.Round(estimate.Low, 2), Math.Round(estimate.High, 2)));
    }
}
