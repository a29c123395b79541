using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>The impedance of drawn modes against the same equations solved densely.</summary>
public sealed class ImpedanceKernelTests
{
    private static readonly double[] s_two = [0.4, 0.6];
    private static readonly double[] s_three = [0.3, 0.5, 0.2];

    /// <summary>Few and many directions, beyond 32 and beyond 64 of them; few and many modes, beyond 32 and beyond 128 of them.</summary>
    public static TheoryData<int, int, bool, bool> Cases => new()
    {
        { 0, 5, false, false }, { 1, 5, false, true }, { 3, 6, false, false }, { 3, 6, true, true }, { 4, 30, true, true }, { 5, 60, false, true },
        { 32, 30, true, true }, { 33, 30, true, true }, { 33, 20, false, true }, { 40, 60, true, false }, { 65, 40, true, true }, { 65, 70, false, true },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void It_is_that_of_dense_equations(int directions, int modes, bool isSkew, bool hasInputs)
    {
        DenseImpedance dense = new(20261126 + directions + modes, isSkew ? s_three : s_two, directions, modes, isSkew, hasInputs);
        ImpedanceKernel kernel = ImpedanceKernel.Of(dense.Terms(), isTied: false);
        Assert.Equal(directions, kernel.Directions);
        foreach (double period in (double[])[0.1, 2, 30])
        {
            double expected = dense.Ohms(period);
            Assert.Equal(expected, kernel.Ohms(period), 1e-9 * expected);
            Assert.Equal(expected, kernel.Ohms(period, out PortRatios beside), 1e-9 * expected);
            (double voltage, double current, double siemens) = dense.Ratios(period);
            foreach (PortRatios ratios in (PortRatios[])[beside, kernel.Ratios(period)])
            {
                Assert.Equal([voltage, current, siemens], new[] { ratios.Voltage, ratios.Current, ratios.InputSiemens }, Closeness.Within(1e-8));
            }

            foreach (bool reversed in (bool[])[false, true])
            {
                double[] amounts = [.. Enumerable.Repeat(7.0, directions)];
                kernel.Amounts(period, amounts, reversed);
                Assert.Equal(dense.Amounts(period, reversed), amounts, Closeness.Within(1e-8));
                amounts.AsSpan().Fill(7);
                kernel.InputAmounts(period, amounts, reversed);
                Assert.Equal(dense.InputAmounts(period, reversed), amounts, Closeness.Within(1e-8 * period));
            }
        }
    }
}
