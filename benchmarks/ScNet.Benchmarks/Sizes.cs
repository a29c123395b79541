using BenchmarkDotNet.Attributes;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;
using MathNet.Numerics.Optimization.ObjectiveFunctions;
using MathNet.Numerics.RootFinding;
using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Design.Sizing;
using ScNet.Devices;
using ScNet.Topologies;

namespace ScNet.Benchmarks;

/// <summary>
/// Sizes of a 3:1 series-parallel converter for a light and a heavy load, against what a user with MathNet.Numerics would write: a search downhill
/// over the logarithms of all sizes on the same loss model, with the frequency of each load found by a root.
/// </summary>
public class Sizes
{
    private const double Area = 4e-7, FloorHz = 1e4, CeilingHz = 3e8;

    private readonly ConverterAnalysis _analysis = ConverterAnalysis.Of(SeriesParallel.StepDown(3));
    private readonly SizingPoint[] _points = [new(Mode.DefaultName, 3, 0.9, 1e-3, 20), new(Mode.DefaultName, 3, 0.9, 8e-3)];
    private readonly Process _process = new()
    {
        Name = "invented",
        Switches = [DemoDevices.NType1V8],
        Capacitors = [new() { Name = "plated", Source = "invented", RatedVolts = 1.2, FaradsPerSquareMetre = 8e-3, BottomPlateFraction = 0.03 }],
        MaximumSwitchesInSeries = 3,
    };

    private SizedDesign? _design;

    /// <summary>Makes sure that both ways come to the same loss.</summary>
    [GlobalSetup]
    public void RequireAgreement()
    {
        _design = Size();
        double found = SearchDownhill();
        if (!(found > _design.WeightedLossWatts * (1 - 1e-6) && found < _design.WeightedLossWatts * 1.001))
        {
            throw new InvalidOperationException($"Expected {_design.WeightedLossWatts} W, but the search found {found} W.");
        }
    }

    /// <summary>Kinds, sizes and frequencies with their certificate.</summary>
    [Benchmark(Baseline = true)]
    public SizedDesign Size() => SizedDesign.Of(_analysis, _process, _points, new AreaBudget(Area), new(FloorHz, CeilingHz));

    /// <summary>The search, for the kinds and stacks found, from equal shares of the area.</summary>
    [Benchmark]
    public double SearchDownhill()
    {
        SizedConverter of = _design!.Converter;
        double share = Area / (of.Capacitors.Count + of.Switches.Count);
        double[] from =
        [
            .. of.Capacitors.Select(c => Math.Log(share * c.Farads / c.AreaSquareMetres)),
            .. of.Switches.Select(s => Math.Log(share / (s.Ohms * s.AreaSquareMetres))),
        ];
        Vector<double> start = Vector<double>.Build.DenseOfArray(from), room = Vector<double>.Build.Dense(from.Length, 8);
        double least = double.PositiveInfinity;
        ForwardDifferenceGradientObjectiveFunction objective = new(ObjectiveFunction.Value(Loss), start - room, start + room, 1e-6, 1e-6);
        try
        {
            new BfgsBMinimizer(1e-9, 1e-7, 1e-10, 100).FindMinimum(objective, start - room, start + room, start);
        }
        catch (OptimizationException)
        {
            // rounding leaves no way down from where it is
        }

        return least;

        double Loss(Vector<double> logarithms)
        {
            SizedConverter sized = Of(logarithms, Area / Of(logarithms, 1).AreaSquareMetres);
            ModeAnalysis mode = _analysis.Modes[0].Require();
            LossModel model = LossModel.Of(sized, mode);
            double sum = 0;
            foreach (SizingPoint point in _points)
            {
                double needed = ((mode.Ratio.ToDouble() * point.InputVolts) - point.OutputVolts!.Value) / point.LoadAmperes, reached = model.Impedance.Ohms(CeilingHz);
                if (reached >= needed)
                {
                    return reached / needed;
                }

                double hertz = Math.Exp(Brent.FindRoot(u => Math.Log(model.Impedance.Ohms(Math.Exp(u)) / needed), Math.Log(FloorHz), Math.Log(CeilingHz), 1e-12, 200));
                sum += point.Weight * model.At(new(point.InputVolts, point.LoadAmperes, hertz)).TotalLossWatts;
            }

            least = Math.Min(least, sum);
            return sum;
        }

        SizedConverter Of(Vector<double> logarithms, double factor)
        {
            int count = of.Capacitors.Count;
            StackedCapacitor[] capacitors = [.. of.Capacitors.Select((c, i) => new StackedCapacitor(c.Device, c.Count, factor * Math.Exp(logarithms[i])))];
            StackedSwitch[] switches = [.. of.Switches.Select((s, i) => new StackedSwitch(s.Device, s.Count, Math.Exp(-logarithms[count + i]) / factor))];
            return new SizedConverter(_analysis.Converter.WithValues([.. capacitors.Select(c => c.Farads)], [.. switches.Select(s => s.Ohms)]), switches, capacitors, null, _process);
        }
    }
}
