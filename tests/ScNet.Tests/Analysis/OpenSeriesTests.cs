using ScNet.Analysis;

namespace ScNet.Tests.Analysis;

/// <summary>How many open voltages there is room for.</summary>
public sealed class OpenSeriesTests
{
    // 2²⁵ entries: with two capacitors, the output and the input as branches, 2²³ open voltages
    [Fact]
    public void There_is_room_for_a_given_number_of_entries_and_for_none_more()
    {
        Converter converter = Converter.Create("half").Input("vin").Output("vout").Capacitor("a", "p", "n").Capacitor("b", "p", "n")
            .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2).Build();
        ModeFindings room = new(converter, converter.Modes[0], []), full = new(converter, converter.Modes[0], []);

        Assert.Equal(4, converter.Network.BranchCount);
        Assert.True(room.CheckRoom(1 << 23));
        Assert.Empty(room.All);
        Assert.False(full.CheckRoom((1 << 23) + 1));
        Findings.Is(
            Assert.Single(full.All),
            DiagnosticCodes.VoltagesTooOpen,
            null,
            "Nothing fixes the voltages of 8388609 of 2 capacitors, more than can be told apart: 33554432 pairs of an open voltage and an element at most. Join capacitors that lie in series into one each, or connect the nodes between them.");
    }

    // the numbers of the capacitors themselves, 0 to 449, would add up to more than there is room for
    [Fact]
    public void A_series_of_some_hundreds_has_a_result()
    {
        Converter converter = Series(450);
        IReadOnlyList<Diagnostic> warnings = Findings.Warnings(converter);

        Assert.Equal(450, warnings.Count);
        Assert.All(warnings, w => Assert.Equal(DiagnosticCodes.CapacitorVoltageUndetermined, w.Code));
        Assert.Equal(Quantity.Exact(1, 2), ModeAnalysis.Of(converter).Ratio);
    }

    // six thousand times six thousand are more than 2²⁵; where loops contradict each other besides, that alone is told
    [Fact]
    public void A_series_of_some_thousands_has_none()
    {
        Assert.Equal(DiagnosticCodes.VoltagesTooOpen, Findings.Error(Series(6000)).Code);
        Assert.Equal(DiagnosticCodes.VoltageConflict, Findings.Error(Series(6000, isContradictory: true)).Code);
    }

    // once there is no room for the voltages the output is not looked at, which here nothing ever charges
    [Fact]
    public void What_is_too_open_is_the_only_thing_told()
    {
        ConverterBuilder builder = Converter.Create("apart").Input("vin").Output("vout").Capacitor("own", "vin", "gnd");
        for (int k = 0; k < 6000; k++)
        {
            builder.Capacitor($"c{k}", $"p{k}", $"p{k + 1}");
        }

        Converter converter = builder.Switch("s1", "p0", "vout", on: [1, 2]).Switch("s2", "p6000", "gnd", on: [1, 2]).Build();
        Assert.Equal([DiagnosticCodes.VoltagesTooOpen], ModeAnalysis.Try(converter, converter.Modes[0]).Diagnostics.Select(d => d.Code));
    }

    /// <summary>A halving cell whose capacitor is many in series.</summary>
    private static Converter Series(int count, bool isContradictory = false)
    {
        ConverterBuilder builder = Converter.Create("series").Input("vin").Output("vout");
        if (isContradictory)
        {
            builder.Capacitor("turned", "t", "u").Switch("t1", "vin", "t", on: 1).Switch("t2", "u", "gnd", on: 1).Switch("t3", "vin", "u", on: 2).Switch("t4", "t", "gnd", on: 2);
        }

        for (int k = 0; k < count; k++)
        {
            builder.Capacitor($"c{k}", $"p{k}", $"p{k + 1}");
        }

        return builder
            .Switch("s1", "vin", "p0", on: 1).Switch("s2", $"p{count}", "vout", on: 1)
            .Switch("s3", "p0", "vout", on: 2).Switch("s4", $"p{count}", "gnd", on: 2).Build();
    }
}
