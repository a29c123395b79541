using ScNet.Analysis;
using ScNet.Kernel;

namespace ScNet.Tests.Analysis;

/// <summary>Which currents rest in which phase: one that ended in the last phase that had a path for it.</summary>
public sealed class RestingCurrentsTests
{
    [Fact]
    public void A_current_rests_from_the_phase_that_ended_it_to_the_next_with_a_path()
    {
        Converter converter = Some(endsFirst: 2, endsSecond: 1, endsLast: 3);

        // one row each for the load and the four inductors
        bool[] expected =
        [
            false, false, false,
            true, false, true,
            false, true, false,
            false, false, false,
            false, false, false,
        ];
        Assert.Equal(expected, Of(converter));
    }

    [Fact]
    public void Without_a_current_that_ends_there_is_nothing_to_tell() => Assert.Empty(Of(Some(default, default, default)));

    // paths: the first in phase 2; the second in phases 1 and 3; the third in phase 1, and it goes on; the last never
    private static Converter Some(PhaseSet endsFirst, PhaseSet endsSecond, PhaseSet endsLast) =>
        Converter.Create("resting").Input("vin").Output("vout", LoadKind.Current).Phases(3)
            .Capacitor("out", "vout", "gnd").Switch("through", "vin", "vout", on: [1, 2, 3])
            .Inductor("first", "vin", "x", untilZero: endsFirst).Switch("x", "x", "gnd", on: 2)
            .Inductor("second", "vin", "y", untilZero: endsSecond).Switch("y", "y", "gnd", on: [1, 3])
            .Inductor("third", "vin", "z").Switch("z", "z", "gnd", on: 1)
            .Inductor("last", "vin", "w", untilZero: endsLast).Switch("w", "w", "gnd")
            .Build();

    private static bool[] Of(Converter converter)
    {
        SwitchedNetwork network = converter.Network;
        return RestingCurrents.Of(network, [.. Enumerable.Range(0, 3).Select(phase => PhaseForest.Of(network, network.ClosedIn(0, phase)))], converter.Modes[0]);
    }
}
