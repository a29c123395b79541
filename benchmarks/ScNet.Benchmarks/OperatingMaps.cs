using BenchmarkDotNet.Attributes;
using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Design.Maps;
using ScNet.Design.Regulation;
using ScNet.Devices;
using ScNet.SteadyState;
using ScNet.Topologies;

namespace ScNet.Benchmarks;

/// <summary>
/// A map of 200 input times 200 output voltages and 8 modes of invented sizes, the frequency of each found at every point, against
/// bisection on the exact impedance and a loss budget at every point by itself.
/// </summary>
public class OperatingMaps
{
    private const int Side = 200;
    private const int Stride = 10;
    private const double Load = 5e-3;
    private const double FloorHz = 1e5;
    private const double CeilingHz = 1e8;

    private readonly LossModel[] _models = [.. new[]
    {
        SeriesParallel.StepDown(2), SeriesParallel.StepDown(3), SeriesParallel.StepDown(4), SeriesParallel.StepDown(5),
        Dickson.StepDown(4), Dickson.StepDown(5), Ladder.StepDown(3), Ladder.StepDown(5),
    }.Select(Model)];

    private readonly double[] _inputs = [.. Enumerable.Range(0, Side).Select(k => 2.8 + (1.4 * k / (Side - 1)))];
    private readonly double[] _outputs = [.. Enumerable.Range(0, Side).Select(k => 0.4 + (1.6 * k / (Side - 1)))];
    private RegulatedMode[] _modes = [];

    /// <summary>Prepares the modes and makes sure that both ways find the same.</summary>
    [GlobalSetup]
    public void RequireAgreement()
    {
        _modes = [.. SetUp()];
        OperatingMap map = Map();
        int held = 0;
        for (int i = 0; i < Side; i += Stride)
        {
            for (int o = 0; o < Side; o += Stride)
            {
                (double watts, int mode) = Best(_inputs[i], _outputs[o]);
                MapPoint point = map.At(i, o);
                if (mode != (point.BestModeIndex ?? -1) || (mode >= 0 && !(Math.Abs((point.Best.InputWatts / watts) - 1) < 1e-9)))
                {
                    throw new InvalidOperationException($"Expected mode {mode} with {watts} W, but got {point}.");
                }

                held += mode >= 0 ? 1 : 0;
            }
        }

        Console.WriteLine($"// {held} of {Side / Stride * (Side / Stride)} sampled points are held");
    }

    /// <summary>What is done once for eight modes.</summary>
    [Benchmark]
    public IReadOnlyList<RegulatedMode> SetUp() => [.. _models.Select(m => RegulatedModes.OfFrequency(m, new(FloorHz, CeilingHz)))];

    /// <summary>The map on all cores.</summary>
    [Benchmark(Baseline = true)]
    public OperatingMap Map() => OperatingMap.Of(_modes, _inputs, _outputs, [Load]);

    /// <summary>The map on one core.</summary>
    [Benchmark]
    public OperatingMap MapOnOneCore() => OperatingMap.Of(_modes, _inputs, _outputs, [Load], threads: 1);

    /// <summary>A hundredth of the points, each by itself on one core: multiply by 100 for all of them.</summary>
    [Benchmark]
    public double OneByOneOneHundredth()
    {
        double sum = 0;
        for (int i = 0; i < Side; i += Stride)
        {
            for (int o = 0; o < Side; o += Stride)
            {
                sum += Best(_inputs[i], _outputs[o]).Watts is var watts && double.IsFinite(watts) ? watts : 0;
            }
        }

        return sum;
    }

    private (double Watts, int Mode) Best(double input, double output)
    {
        (double Watts, int Mode) best = (double.PositiveInfinity, -1);
        for (int m = 0; m < _models.Length; m++)
        {
            LossModel model = _models[m];
            double needed = ((model.Analysis.Ratio.ToDouble() * input) - output) / Load;
            if (needed > 0 && Frequency(model.Impedance, needed) is { } hertz
                && model.At(new OperatingPoint(input, Load, hertz)).InputWatts is var watts && watts < best.Watts)
            {
                best = (watts, m);
            }
        }

        return best;
    }

    // bisection to twelve digits; below the floor so many cycles are left out
    private static double? Frequency(OutputImpedance impedance, double needed)
    {
        double atFloor = impedance.Ohms(FloorHz);
        if (atFloor <= needed || impedance.Ohms(CeilingHz) > needed)
        {
            return atFloor <= needed ? FloorHz * atFloor / needed : null;
        }

        double low = FloorHz, high = CeilingHz;
        while (high / low > 1 + 1e-12)
        {
            double middle = Math.Sqrt(low * high);
            (low, high) = impedance.Ohms(middle) > needed ? (middle, high) : (low, middle);
        }

        return high;
    }

    private static LossModel Model(Converter family)
    {
        Converter converter = family.WithValues([.. family.Capacitors.Select(_ => 1e-9)], [.. family.Switches.Select(_ => 4.0)]);
        Process process = new() { Name = "demo", Switches = [DemoDevices.NType1V8], Capacitors = [DemoDevices.Plate3V6] };
        SizedConverter sized = new(
            converter,
            [.. converter.Switches.Select(s => new StackedSwitch(DemoDevices.NType1V8, 1, s.Ohms))],
            [.. converter.Capacitors.Select(c => new StackedCapacitor(DemoDevices.Plate3V6, 1, c.Farads))],
            null,
            process);
        return LossModel.Of(sized, ModeAnalysis.Of(converter));
    }
}
