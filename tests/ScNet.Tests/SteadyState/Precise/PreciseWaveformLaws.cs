using CsCheck;
using ScNet.Analysis;
using ScNet.SteadyState;
using ScNet.Tests.Networks;
using ScNet.Tests.Numerics;

namespace ScNet.Tests.SteadyState.Precise;

/// <summary>
/// Waveforms, means, effective values and losses of random networks of values over twelve decades against the node equations
/// in 640 binary places.
/// </summary>
[Trait("Kind", "Law")]
[Trait("Against", "Oracle")]
public sealed class PreciseWaveformLaws
{
    private const double InputVolts = 2;
    private const double Tolerance = 1e-8;
    private const int Count = 16;

    // a current that is a smaller share of the load's is seen in proportion to this share: its square is near the rounding of others
    private const double Dust = 1e-3;

    // of the input voltage, a tenth of the last digit of a double: what drives a ring at rest is the difference of voltages that agree but for that
    private const double RoundedVolts = 1e-17 / Tolerance;

    // a smaller ripple is the difference of two doubles that nearly agree
    private const double SmallRipple = 1e-3;

    [Fact]
    public void Waveforms_with_parasitics_are_those_of_the_node_equations_in_640_places() => Gen.Select(SpreadConverters.Gen, Gen.Int[0, int.MaxValue - 1]).Holds(
        (sample, seed) =>
        {
            Converter converter = PlatedNetworks.WithPlates(sample.Converter, new Random(seed), r => 0.01 * Math.Pow(10, (6 * r.NextDouble()) - 3));
            if (ModeAnalysis.Try(converter, converter.Modes[0]).Analysis is { FastSwitchingLimit.Ohms: > 0 } analysis)
            {
                double corner = analysis.SlowSwitchingLimit.OhmsAtOneHertz / analysis.FastSwitchingLimit.Ohms, hertz = sample.FrequencyOverCorner * (corner > 0 ? corner : 1);
                PreciseNetwork network = PreciseNetwork.Of(converter, analysis.Mode);
                Check("with parasitics", network, PrecisePeriod.Of(network, hertz), point => SteadyStateModel.Of(analysis).At(point), hertz);
            }
        },
        Count,
        x => x.ToString());

    [Fact]
    public void Waveforms_with_inductors_are_those_of_the_node_equations_in_640_places() => SpreadHybrids.Gen.Holds(
        sample =>
        {
            Converter converter = OutputNetworks.With(sample.Converter);
            if (HybridSolution.TryFind(converter, sample.FrequencyHz) is { } solution && solution.Solver.Structure.FreeCurrents.Count == 0)
            {
                Check(
                    "with inductors",
                    solution.Network,
                    solution.Period,
                    point => new PeriodicSteadyState(converter, converter.Modes[0], null, point, solution.Solver, solution.Found),
                    sample.FrequencyHz);
            }
        },
        Count,
        sample => sample.ToString(),

        // rings of hundreds of turns in a phase, whose highest lay between the times that were looked at
        found: ["1m0d4b0153fpowZc1"]);

    private static void Check(string kind, PreciseNetwork network, PrecisePeriod period, Func<OperatingPoint, PeriodicSteadyState> solve, double hertz)
    {
        PrecisePorts ports = PrecisePorts.Of(period);
        double ohms = Math.Abs(ports.Ports.Ohms);

        // an output that nothing reaches has an impedance beyond all that is allowed as a load
        double amperes = ohms is > 0 and < 1e50 ? 0.1 * InputVolts / ohms : 0.1;
        PeriodicSteadyState steady = solve(new OperatingPoint(InputVolts, amperes, hertz));
        BigReal output = (ports.Ratio * InputVolts) - (ports.Ohms * amperes), input = (ports.CurrentRatio * amperes) + (ports.Siemens * InputVolts);
        PreciseWaves waves = PreciseWaves.Of(network, period, [InputVolts, network.IsStiff ? output : amperes]);
        double lost = PrecisePorts.Nearest((input * InputVolts) - (output * amperes));
        double turned = Math.Max(lost, 1e-6 * Math.Max(Math.Abs((double)output), InputVolts) * amperes);
        Require("dissipation", lost, steady.DissipationWatts, turned);
        Require("losses of elements", lost, OperatedConverters.ElementDissipationWatts(steady), turned);
        BigMatrix voltages = network.CapacitorVoltages(network.Phases[0]);
        for (int c = 0; c < steady.Capacitors.Count; c++)
        {
            if (steady.Capacitors[c].AverageVoltageVolts is { } average)
            {
                BigMatrix row = voltages.Part(c, 0, 1, voltages.Columns);
                Follow("capacitor voltages at ends of phases", row, j => steady.Signals.CapacitorVoltage(j, c), InputVolts);
                double mean = PrecisePorts.Nearest(waves.Mean(_ => row));
                Require("average capacitor voltages", mean, average, Math.Max(InputVolts, Math.Abs(mean)));
                RequireRipple("ripple of capacitor voltages", row, steady.Capacitors[c].RippleVolts, Math.Max(InputVolts, Math.Abs(mean)));
            }
        }

        for (int l = 0; l < steady.Inductors.Count; l++)
        {
            BigMatrix row = network.Phases[0].Inductors.Part(l, 0, 1, voltages.Columns);
            double effective = Root(waves.MeanSquare(_ => row)), size = Math.Max(Math.Max(effective, Dust * amperes), RoundedVolts * InputVolts * Siemens(l));
            Follow("inductor currents at ends of phases", row, j => steady.Signals.InductorCurrent(j, l), size);
            Require("average inductor currents", PrecisePorts.Nearest(waves.Mean(_ => row)), steady.Inductors[l].AverageCurrentAmperes, size);
            RequireRipple("ripple of inductor currents", row, steady.Inductors[l].RippleAmperes, size);
            Require("effective inductor currents", effective, steady.Inductors[l].RmsCurrentAmperes, size);
        }

        double largest = Math.Max(amperes, steady.Switches.Select(s => s.RmsCurrentAmperes).DefaultIfEmpty().Max());
        BigMatrix[] switches = [.. network.Phases.Select((_, j) => network.SwitchCurrents(j))];
        for (int s = 0; s < steady.Switches.Count; s++)
        {
            Require("effective switch currents", Root(waves.MeanSquare(j => switches[j].Part(s, 0, 1, voltages.Columns))), steady.Switches[s].RmsCurrentAmperes, largest);
        }

        // of the ring of an inductor with the largest capacitor there is
        double Siemens(int inductor) =>
            Math.Sqrt(steady.Capacitors.Select(c => c.Capacitor.Farads).DefaultIfEmpty().Max() / steady.Inductors[inductor].Inductor.Henries);

        void RequireRipple(string quantity, BigMatrix row, double actual, double size)
        {
            if (waves.SeesEveryTurn)
            {
                (BigReal least, BigReal greatest) = waves.Extremes(_ => row);
                double ripple = PrecisePorts.Nearest(greatest - least);
                Require(quantity, ripple, actual, Math.Max(ripple, SmallRipple * size));
            }
        }

        void Follow(string quantity, BigMatrix row, Func<int, PhaseWaveform> waveform, double least)
        {
            double[] starts = [.. network.Phases.Select((_, j) => PrecisePorts.Nearest((row * waves.Starts[j])[0, 0]))];
            double scale = Math.Max(least, starts.Max(Math.Abs));
            for (int j = 0; j < starts.Length; j++)
            {
                Require(quantity, starts[j], waveform(j).At(0), scale);
            }
        }

        void Require(string quantity, double expected, double actual, double scale) =>
            WorstErrors.OfRun.Require($"{quantity} {kind}", expected, actual, scale, Tolerance, $"at {hertz:R} Hz");
    }

    private static double Root(BigReal square) => Math.Sqrt(Math.Max(0, PrecisePorts.Nearest(square)));
}
