using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>Where a signal turns as its grid sees it: exactly at a point, in modes of which one has no part, or nowhere.</summary>
public sealed class ModalWaveformTurnsTests
{
    // K s (1 - s), s = t/τ: the derivative is zero in the middle, which is the twelfth of 24 equal parts
    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void A_turn_exactly_at_a_grid_point_is_an_extreme(double sign)
    {
        const double Duration = 24;
        PhaseBasis basis = new([0], Duration);
        Assert.Equal(Duration / 2, basis.Grid[12]);
        Assert.Equal(0, basis.ShapesAt(12)[0]);
        (double least, double greatest) = new ModalWaveform(basis, 0, 0, [], [sign * 2 / Duration]).Extremes();
        Assert.Equal(0.25, sign > 0 ? greatest : -least, 1e-14);
        Assert.Equal(0, sign > 0 ? least : greatest);
    }

    // m s + 2 (1 - 2^-s) - s peaks where m - 1 + 2 ln2 2^-s is zero, between the eleventh and the twelfth of 24 equal parts. The other
    // mode's shape is zero at the twelfth.
    [Fact]
    public void A_mode_that_has_no_part_in_a_signal_hides_no_peak()
    {
        const double Duration = 24, Turn = 0.48;
        double log = Math.Log(2), slope = 1 - (2 * log * Math.Pow(2, -Turn));
        PhaseBasis basis = new([0, log / Duration], Duration);
        Assert.Equal(0, basis.ShapesAt(12)[0]);
        ModalWaveform wave = new(basis, 0, slope, [], [0, log / Duration]);
        Assert.Equal((slope * Turn) + (2 * (1 - Math.Pow(2, -Turn))) - Turn, wave.Extremes().Greatest, 1e-14);
    }

    // between any two of its grid points places to look at would take five thousand bytes
    [Fact]
    public void A_current_that_only_falls_keeps_no_places_to_look_at()
    {
        PhaseBasis basis = new([100], 1);
        Assert.True(basis.Grid.Length > 40);
        ModalWaveform wave = new(basis, 0, 0, [1], []);
        Assert.Equal((wave.At(1), wave.At(0)), wave.Extremes());
        Assert.InRange(Allocations.Of(() => wave.Extremes()), 0, 1000);
    }
}
