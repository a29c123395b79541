using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>What a part works out for its impedance, and what it takes from what is there already.</summary>
public sealed class PreparedPartTests
{
    // shares of 200 resistors would take 320 000 bytes in phase 1 alone
    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    public void The_impedance_needs_no_shares_of_resistors(int phases)
    {
        (PreparedPart asked, PreparedPart whole) = (Prepare(Row(phases, 200)), Prepare(Row(phases, 200)));
        long impedance = Allocations.Of(() => _ = asked.Kernel), rows = Allocations.Of(() => _ = whole.Phases);
        Assert.InRange(impedance, 0, rows - 200_000);
        Assert.NotEmpty(whole.Flows.Directions);
    }

    [Fact]
    public void The_impedance_takes_rows_that_are_there()
    {
        PreparedPart part = Prepare(Row(3, 200));
        PhaseModes modes = part.Phases[0];
        Assert.InRange(Allocations.Of(() => _ = part.Kernel), 0, 8 * modes.ModeCount * modes.ParticularColumn / 2);
    }

    // of two phases nothing depends on their order, however the sums are rounded
    [Fact]
    public void Amounts_of_two_phases_are_the_same_to_the_last_digit_whether_rows_were_there_or_not()
    {
        (PreparedPart first, PreparedPart second) = (Prepare(Row(2, 5)), Prepare(Row(2, 5)));
        Assert.Equal(2, second.Phases.Length);
        Assert.True(first.Flows.Directions.Count >= 3);
        foreach (double period in new[] { 0.3, 1, 7, 40, 300 })
        {
            double[] expected = new double[first.Flows.Directions.Count], actual = new double[expected.Length];
            first.Kernel.Amounts(period, expected, reversed: false);
            second.Kernel.Amounts(period, actual, reversed: false);
            Assert.Equal(expected, actual);
        }
    }

    /// <summary>
    /// Two switches in a row short a capacitor each, and both together a third: loops that resistors do not tell apart, which is seen when the
    /// chains are to be turned. A row of capacitors that leads nowhere makes the phase large: 1654 resistors and states, 10 · 1654² · 1657 multiplications.
    /// </summary>
    [Fact]
    public void Chains_that_rounding_forbids_are_refused_where_dense_rows_are_too_large()
    {
        ConverterBuilder builder = OperatedConverters.Half().Capacitor("ab", "a", "b").Capacitor("bc", "b", "gnd").Capacitor("ac", "a", "gnd")
            .Switch("sab", "a", "b", on: 1).Switch("sbc", "b", "gnd", on: 1);
        for (int k = 0; k < 1650; k++)
        {
            builder.Capacitor($"c{k}", $"x{k}", k == 0 ? "gnd" : $"x{k - 1}", 1, esrOhms: 1);
        }

        Converter converter = builder.Build();
        TopologySolution topology = ModeAnalysis.Of(converter).Topology;
        PreparedPart part = PreparedPart.Of(converter, FullTopology.Of(converter, topology), [0.5, 0.5], SteadyStateSize.Of(converter, topology, []));
        Assert.True(part.IsChain(0));
        Assert.Equal(DiagnosticCodes.SteadyStateTooLarge, Assert.Single(Assert.Throws<ScNetException>(() => part.Kernel).Diagnostics).Code);
    }

    // four flying capacitors side by side behind switches in a row, on top of the output in phase 1 and across it in the others
    private static Converter Row(int phases, int switches)
    {
        PhaseSet across = [.. Enumerable.Range(2, phases - 1)];
        ConverterBuilder builder = Converter.Create("row").Input("vin").Output("vout", LoadKind.Current).Phases(phases).Capacitor("out", "vout", "gnd", 3, esrOhms: 2)
            .Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: across).Switch("s4", "n", "gnd", on: across);
        for (int i = 0; i < 4; i++)
        {
            builder.Capacitor($"fly{i}", "p", "n", 1 + (0.7 * i), esrOhms: 0.25 + (0.3 * i * i));
        }

        for (int k = 0; k < switches; k++)
        {
            builder.Switch($"r{k}", k == 0 ? "vin" : $"x{k}", k == switches - 1 ? "p" : $"x{k + 1}", on: 1, ohms: 1 + (0.1 * (k % 3)));
        }

        return builder.Build();
    }

    private static PreparedPart Prepare(Converter converter) => PreparedMode.Of(converter, ModeAnalysis.Of(converter).Topology).Parts[0];
}
