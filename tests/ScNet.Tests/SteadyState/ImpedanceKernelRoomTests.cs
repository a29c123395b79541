using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>Where the equations of a period are kept: one row for each direction, and a few values for each besides.</summary>
public sealed class ImpedanceKernelRoomTests
{
    private readonly double[] _amounts = new double[33];

    [Theory]
    [InlineData(1, false)]
    [InlineData(1, true)]
    [InlineData(32, false)]
    [InlineData(32, true)]
    public void Up_to_32_directions_allocate_nothing(int directions, bool isSkew)
    {
        ImpedanceKernel kernel = Kernel(directions, isSkew);
        Span<double> amounts = _amounts.AsSpan(0, directions);
        double sum = 0;
        long allocated = 0;

        // the first time what is compiled may count
        for (int time = 0; time < 2; time++)
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            sum += kernel.Ohms(2) + kernel.Ohms(2, out PortRatios beside) + kernel.Ratios(2).Voltage + beside.Current;
            kernel.Amounts(2, amounts, reversed: false);
            kernel.InputAmounts(2, amounts, reversed: true);
            allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        }

        Assert.Equal(0, allocated);
        Assert.True(double.IsFinite(sum));
    }

    // of n directions n² numbers, and besides the other side, the solution and what the input drives; without the last two the amounts alone
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void More_directions_than_a_stack_may_be_asked_to_hold_are_on_the_heap(bool isSkew)
    {
        ImpedanceKernel kernel = Kernel(33, isSkew);
        long most = Allocations.Of(() => kernel.Ohms(2, out _));
        Assert.InRange(most, 8 * 33 * (33 + 3), 16 * 33 * (33 + 3));
        long fewest = Allocations.Of(() => kernel.Amounts(2, _amounts, reversed: false));
        Assert.InRange(fewest, 8 * 33 * (33 + 1), 16 * 33 * (33 + 1));
    }

    private static ImpedanceKernel Kernel(int directions, bool isSkew) =>
        ImpedanceKernel.Of(new DenseImpedance(20261126 + directions, isSkew ? [0.3, 0.5, 0.2] : [0.4, 0.6], directions, 30, isSkew, hasInputs: true).Terms(), isTied: false);
}
