using OnboardHeat.Core.Statistics;

namespace OnboardHeat.Core.Tests.Statistics;

public sealed class StudentTTests
{
    /// <summary>
    /// NIST/SEMATECH e-Handbook, table 1.3.6.7.2, critical values of Student's t, column 0.95 (values from memory).
    /// </summary>
    [Theory]
    [InlineData(1, 6.314)]
    [InlineData(2, 2.920)]
    [InlineData(3, 2.353)]
    [InlineData(5, 2.015)]
    [InlineData(10, 1.812)]
    [InlineData(30, 1.697)]
    [InlineData(100, 1.660)]
    public void Quantile_IsThatOfTheTable(int freedom, double expected) =>
        Assert.Equal(expected, StudentT.Quantile(0.95, freedom), 0.0006);

    /// <summary>
    /// scipy 1.10.1, <c>scipy.stats.t.ppf(0.95, df)</c>, degrees of freedom that are no whole numbers among them.
    /// </summary>
    [Theory]
    [InlineData(1.5, 3.705180820160004)]
    [InlineData(2.7, 2.4638889362708682)]
    [InlineData(136.875, 1.6560623772590652)]
    [InlineData(326, 1.6495411571983418)]
    public void Quantile_IsThatOfAReferenceLibrary(double freedom, double expected) =>
        Assert.Equal(expected, StudentT.Quantile(0.95, freedom), 1e-9);

    [Fact]
    public void Quantile_RefusesSharesThatHaveNone()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentT.Quantile(1, 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentT.Quantile(0.4, 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentT.Quantile(0.95, 0));
    }
}
