using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// Values, means and squares of one signal over one phase, by hand. A mode of rate zero has the shape ψ = 1/2 - s with
/// s = t/τ, and its integral Ψ = τ s (1 - s) / 2; one that halves over the phase has ψ = 2·2^-s - 1/ln 2.
/// </summary>
public sealed class ModalWaveformTests
{
    private const double Duration = 2;
    private const double Tolerance = 1e-14;
    private static readonly double s_halving = Math.Log(2) / Duration;

    [Fact]
    public void A_voltage_is_its_start_a_slope_and_the_integrals_of_shapes()
    {
        // at s = 1/4: 1 + 3/4 + 4 · 2 · (1/4)(3/4) / 2
        ModalWaveform voltage = new(new PhaseBasis([0], Duration), 1, 3, [], [4]);
        Assert.Equal(2.5, voltage.At(0.5), Tolerance);
        Assert.Equal(1, voltage.At(0), Tolerance);
        Assert.Equal(4, voltage.At(Duration), Tolerance);
        Assert.Equal(3, voltage.Change);
    }

    [Fact]
    public void A_current_is_a_constant_and_shapes()
    {
        ModalWaveform current = new(new PhaseBasis([0, s_halving], Duration), 1, 0, [4, 3], []);
        Assert.Equal(1 + (4 * 0.25) + (3 * ((2 * Math.Pow(2, -0.25)) - (1 / Math.Log(2)))), current.At(0.5), Tolerance);
        Assert.Equal(1 - 2 + (3 * (1 - (1 / Math.Log(2)))), current.At(Duration), Tolerance);
    }

    // Ψ of the halving mode is [2 (1 - 2^-s) - s] τ / ln 2, its mean therefore (2 - 1/ln 2 - 1/2) τ / ln 2
    [Fact]
    public void The_mean_of_a_voltage_takes_half_its_slope_and_the_means_of_the_integrals()
    {
        Assert.Equal(1 + 1.5 + (4 * Duration / 12), new ModalWaveform(new PhaseBasis([0], Duration), 1, 3, [], [4]).Mean(), Tolerance);
        double halving = (1.5 - (1 / Math.Log(2))) * Duration / Math.Log(2);
        ModalWaveform both = new(new PhaseBasis([0, s_halving], Duration), -2, 1, [], [6, 5]);
        Assert.Equal(-2 + 0.5 + 1 + (5 * halving), both.Mean(), Tolerance);
    }

    // ∫ψ² is τ/12 at rate zero; of the halving mode τ [4 (1 - 1/4) / (2 ln 2) - 2 / ln² 2 + 1 / ln² 2]
    [Fact]
    public void The_square_of_a_current_is_that_of_its_mean_and_that_of_its_shapes()
    {
        ModalWaveform single = new(new PhaseBasis([0], Duration), 3, 0, [6], []);
        Assert.Equal((9 * Duration) + (36 * Duration / 12), single.SquareIntegral(), 1e-13);
        double log = Math.Log(2), halving = Duration * ((1.5 / log) - (1 / (log * log)));
        ModalWaveform second = new(new PhaseBasis([0, s_halving], Duration), 3, 0, [0, 5], []);
        Assert.Equal((9 * Duration) + (25 * halving), second.SquareIntegral(), 1e-13);
    }

    // ∫ (1/2 - s)(2·2^-s - 1/ln 2) over the phase: the second term has no part, as 1/2 - s has no mean
    [Fact]
    public void Two_shapes_in_one_current_count_with_their_product()
    {
        double log = Math.Log(2);

        // ∫2^-s = 1/(2 ln 2) and ∫ s 2^-s = -1/(2 ln 2) + 1/(2 ln² 2) from 0 to 1
        double product = Duration * ((0.5 / log) + (1 / log) - (1 / (log * log)));
        PhaseBasis basis = new([0, s_halving], Duration);
        double both = new ModalWaveform(basis, 0, 0, [6, 5], []).SquareIntegral();
        double apart = new ModalWaveform(basis, 0, 0, [6, 0], []).SquareIntegral() + new ModalWaveform(basis, 0, 0, [0, 5], []).SquareIntegral();
        Assert.Equal(2 * 6 * 5 * product, both - apart, 1e-13);
    }

    [Fact]
    public void Currents_of_one_basis_add_up_with_their_signs()
    {
        PhaseBasis basis = new([0, s_halving], Duration);
        ModalWaveform sum = ModalWaveform.Sum(
            Duration, [(1, new ModalWaveform(basis, 3, 0, [4, 2], [])), (-1, new ModalWaveform(basis, 5, 0, [8, 1], []))]);
        Assert.Equal(-2 - 2 + (2 - (1 / Math.Log(2))), sum.At(0), Tolerance);
        Assert.Equal(-2 + 2 + (1 - (1 / Math.Log(2))), sum.At(Duration), Tolerance);
        Assert.Equal(-2, sum.Mean(), Tolerance);
    }

    [Fact]
    public void Currents_of_several_bases_keep_each_their_modes()
    {
        PhaseBasis first = new([0, 0], Duration), second = new([s_halving], Duration), third = new([0], Duration);
        ModalWaveform sum = ModalWaveform.Sum(Duration,
        [
            (1, new ModalWaveform(first, 1, 0, [4, 2], [])),
            (-1, new ModalWaveform(second, 2, 0, [3], [])),
            (1, new ModalWaveform(third, 4, 0, [8], [])),
        ]);
        Assert.Equal(3 + 3 - (3 * (2 - (1 / Math.Log(2)))) + 4, sum.At(0), Tolerance);
        Assert.Equal(3 - 3 - (3 * (1 - (1 / Math.Log(2)))) - 4, sum.At(Duration), Tolerance);
        Assert.Equal(0, sum.Change);
    }
}
