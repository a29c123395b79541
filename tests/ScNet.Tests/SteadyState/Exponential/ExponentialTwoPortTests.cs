using ScNet.SteadyState;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Average voltages in open circuit by hand, and faults at a frequency.</summary>
public sealed class ExponentialTwoPortTests
{
    [Fact]
    public void Capacitors_between_sources_have_what_these_leave_and_floating_ones_are_unknown()
    {
        // a step-down stage of duty 1/4; the voltages of two capacitors in series are fixed together alone
        Converter converter = Converter.Create("stage").Input("vin").Output("vout").Duties(0.25, 0.75)
            .Inductor("coil", "x", "vout", 1e-6, 0.02).Switch("high", "vin", "x", on: 1, 0.01).Switch("low", "x", "gnd", on: 2, 0.01)
            .Capacitor("upper", "vin", "m", 1e-6).Capacitor("lower", "m", "gnd", 2e-6)
            .Capacitor("across", "vin", "vout", 1e-7).Capacitor("out", "gnd", "vout", 1e-7).Build();
        TwoPortDetails found = ExponentialTwoPort.Of(converter, converter.Modes[0]).DetailsAt(1e6);
        Assert.Null(found.CapacitorVoltages["upper"]);
        Assert.Null(found.CapacitorVoltages["lower"]);
        Assert.Equal(0.75, found.CapacitorVoltages["across"]!.Value, 1e-12);
        Assert.Equal(-0.25, found.CapacitorVoltages["out"]!.Value, 1e-12);
    }

    [Fact]
    public void A_capacitor_of_an_output_current_has_its_open_voltage()
    {
        Converter converter = Converter.Create("stage").Input("vin").Output("vout", LoadKind.Current).Duties(0.25, 0.75)
            .Inductor("coil", "x", "vout", 1e-6, 0.02).Switch("high", "vin", "x", on: 1, 0.01).Switch("low", "x", "gnd", on: 2, 0.01)
            .Capacitor("out", "gnd", "vout", 1e-5).Capacitor("across", "vout", "vin", 1e-7).Build();
        TwoPortDetails found = ExponentialTwoPort.Of(converter, converter.Modes[0]).DetailsAt(1e6);
        Assert.Equal(-0.25, found.CapacitorVoltages["out"]!.Value, 1e-10);
        Assert.Equal(-0.75, found.CapacitorVoltages["across"]!.Value, 1e-10);
    }

    [Fact]
    public void An_output_without_average_current_is_a_fault_of_no_phase()
    {
        Converter converter = Converter.Create("blocked").Input("vin").Output("vout")
            .Switch("in", "vin", "a", on: [1, 2]).Switch("ground", "a", "gnd", on: [1, 2]).Capacitor("block", "a", "vout", 1e-6).Build();
        ExponentialTwoPort method = ExponentialTwoPort.Of(converter, converter.Modes[0]);
        Action[] calls = [() => method.At(1e3), () => method.DetailsAt(1e3), () => method.FineAt(1e3), () => method.SensitivityAt(1e3), () => method.OhmsByDuty(1e3)];
        foreach (Action call in calls)
        {
            Diagnostic found = Assert.Single(Assert.Throws<ScNetException>(call).Diagnostics);
            Assert.StartsWith("No average current passes", found.Message, StringComparison.Ordinal);
            Assert.Null(found.Phase);
        }
    }

    /// <summary>Without resistance a current could circulate in the two; a winding lets it decay.</summary>
    [Fact]
    public void The_windings_of_parallel_inductors_take_their_circulation()
    {
        Converter converter = Converter.Create("twins").Input("vin").Output("vout").Duties(0.25, 0.75)
            .Inductor("one", "x", "vout", 1e-6, 0.02).Inductor("two", "x", "vout", 1e-6, 0.06).Inductor("bare", "vin", "gnd", 1, 3)
            .Switch("high", "vin", "x", on: 1, 0.01).Switch("low", "x", "gnd", on: 2, 0.01).Build();
        ExponentialTwoPort method = ExponentialTwoPort.Of(converter, converter.Modes[0]);
        Assert.Empty(method.Solver.Structure.FreeCurrents);
        Assert.Equal([true, true, true], method.Solver.Structure.Network.HasWinding);

        // 0.02 Ω and 0.06 Ω side by side behind a switch
        Assert.Equal(0.015 + 0.01, method.At(1e6).Ohms, 1e-9);
    }
}
