using ScNet.Reporting.Charts;
using ScNet.SteadyState;
using Xunit.Sdk;

namespace ScNet.Reporting.Tests.Charts;

/// <summary>What compares charts with numbers notices when they disagree.</summary>
public sealed class ChartReaderTests
{
    private readonly DrawnChart _chart = new(ImpedanceChart.Of(ChartSamples.Half));
    private readonly OutputImpedance _impedance = OutputImpedance.Of(ChartSamples.Half);

    [Fact]
    public void A_curve_two_percent_off_is_noticed()
    {
        DrawnPanel panel = _chart.Panels[0];
        Assert.Throws<TrueException>(() => Pixels.AgreeWith(panel, panel.Lines("exact"), f => 1.05 * _impedance.Ohms(f)));
        Assert.Throws<TrueException>(() => Pixels.AgreeWith(panel, panel.Lines("exact"), f => _impedance.Ohms(1.05 * f)));
        Assert.Throws<TrueException>(() => Pixels.AgreeWith(panel, panel.Lines("nothing"), _impedance.Ohms));
        Assert.Throws<TrueException>(() => Pixels.Equal(10, 11.1));
    }

    [Theory]
    [InlineData("250 mΩ", 0.25)]
    [InlineData("10 kHz", 1e4)]
    [InlineData("-5 %", -5.0)]
    [InlineData("0.498", 0.498)]
    [InlineData("50 µs", 5e-5)]
    [InlineData("20 mW/mm²", 0.02)]
    [InlineData("3 m", null)]
    [InlineData("12 kg", null)]
    public void Quantities_are_read_with_their_prefix(string text, double? value)
    {
        if (value is { } known)
        {
            Assert.Equal(known, DrawnScale.Parse(text), 1e-12 * Math.Abs(known));
        }
        else
        {
            Assert.Throws<TrueException>(() => DrawnScale.Parse(text));
        }
    }
}
