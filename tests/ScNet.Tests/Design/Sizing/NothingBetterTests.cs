using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;
using MathNet.Numerics.Optimization.ObjectiveFunctions;
using MathNet.Numerics.RootFinding;
using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Design.Sizing;
using ScNet.Devices;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Sizing;

/// <summary>
/// Sizes of several families, for a light and a heavy load together, against an optimiser of MathNet that knows nothing of how they were found: every
/// size is free, the area is kept by scaling, and losses are those of the loss model at the frequencies that hold the output.
/// </summary>
public sealed class NothingBetterTests
{
    private const double Area = 4e-7, Volts = 3, Floor = 1e4, Ceiling = 300e6;

    private static readonly CapacitorDevice s_capacitor = new()
    {
        Name = "plated",
        Source = "invented",
        RatedVolts = 1.2,
        FaradsPerSquareMetre = 8e-3,
        BottomPlateFraction = 0.03,
        TopPlateFraction = 0.002,
        LeakageAmperesPerSquareMetre = 1,
    };

    private static readonly Process s_process = new()
    {
        Name = "one kind each",
        Switches = [DemoDevices.NType1V8],
        Capacitors = [s_capacitor],
        MaximumSwitchesInSeries = 4,
        MaximumCapacitorsInSeries = 4,
    };

    public static TheoryData<string> Families => ["series-parallel 2", "series-parallel 3", "ladder 3", "dickson 3", "fibonacci 2", "doubler 2"];

    [Theory]
    [MemberData(nameof(Families))]
    public void An_optimiser_finds_no_lower_loss(string family)
    {
        ConverterAnalysis analysis = ConverterAnalysis.Of(family switch
        {
            "series-parallel 2" => SeriesParallel.StepDown(2),
            "series-parallel 3" => SeriesParallel.StepDown(3),
            "ladder 3" => Ladder.StepDown(3),
            "dickson 3" => Dickson.StepDown(3),
            "fibonacci 2" => Fibonacci.StepDown(2),
            _ => Doubler.StepDown(2),
        });
        double ideal = Volts * analysis.Modes[0].Require().Ratio.ToDouble();
        SizingPoint[] points = [new(Mode.DefaultName, Volts, 0.9 * ideal, 1e-3, 20), new(Mode.DefaultName, Volts, 0.9 * ideal, 8e-3)];
        SizedDesign design = SizedDesign.Of(analysis, s_process, points, new AreaBudget(Area), new(Floor, Ceiling));
        Assert.Empty(design.Unreachable);
        Search search = new(design, analysis.Modes[0].Require(), points);
        double[] best = [.. design.Converter.Capacitors.Select(c => Math.Log(c.Farads)), .. design.Converter.Switches.Select(s => -Math.Log(s.Ohms))];
        Assert.Equal(design.WeightedLossWatts, search.Loss(Vector<double>.Build.DenseOfArray(best)), 1e-6 * design.WeightedLossWatts);
        var random = new Random(11);
        foreach (double spread in (double[])[0.2, 0.5, 1])
        {
            search.LeastWatts = double.PositiveInfinity;
            var start = Vector<double>.Build.DenseOfEnumerable(best.Select(x => x + (spread * ((2 * random.NextDouble()) - 1))));
            double atStart = search.Loss(start);
            search.Run(start);
            Assert.True(search.LeastWatts >= design.WeightedLossWatts * (1 - 1e-6), $"{search.LeastWatts} is below {design.WeightedLossWatts}");

            // that it finds nothing better is worth something only as it comes back from elsewhere
            Assert.True(atStart > design.WeightedLossWatts * (1 + 1e-4));
            Assert.True(search.LeastWatts - design.WeightedLossWatts < 0.02 * (atStart - design.WeightedLossWatts), $"{search.LeastWatts} of {atStart} is far from {design.WeightedLossWatts}");
        }
    }

    private sealed class Search(SizedDesign design, ModeAnalysis mode, SizingPoint[] points)
    {
        private readonly int _capacitors = design.Converter.Capacitors.Count;

        public double LeastWatts { get; set; } = double.PositiveInfinity;

        public void Run(Vector<double> start)
        {
            Vector<double> room = Vector<double>.Build.Dense(start.Count, 6);
            ForwardDifferenceGradientObjectiveFunction objective = new(ObjectiveFunction.Value(Loss), start - room, start + room, 1e-6, 1e-6);
            try
            {
                new BfgsBMinimizer(1e-9, 1e-7, 1e-10, 80).FindMinimum(objective, start - room, start + room, start);
            }
            catch (OptimizationException)
            {
                // it gives up where rounding leaves no way down: what it had found counts
            }
        }

        // brought onto the area, each point at the frequency that holds it
        public double Loss(Vector<double> logarithms)
        {
            SizedConverter sized = Of(logarithms, 1);
            sized = Of(logarithms, Area / sized.AreaSquareMetres);
            LossModel model = LossModel.Of(sized, mode);
            double sum = 0;
            foreach (SizingPoint point in points)
            {
                double needed = ((mode.Ratio.ToDouble() * point.InputVolts) - point.OutputVolts!.Value) / point.LoadAmperes;
                double least = model.Impedance.Ohms(Ceiling);
                if (least >= needed)
                {
                    return design.WeightedLossWatts * 10 * least / needed;
                }

                double hertz = Math.Exp(Brent.FindRoot(u => Math.Log(model.Impedance.Ohms(Math.Exp(u)) / needed), Math.Log(Floor), Math.Log(Ceiling), 1e-13, 200));
                sum += point.Weight * model.At(new(point.InputVolts, point.LoadAmperes, hertz)).TotalLossWatts;
            }

            LeastWatts = Math.Min(LeastWatts, sum);
            return sum;
        }

        private SizedConverter Of(Vector<double> logarithms, double factor)
        {
            StackedCapacitor[] capacitors = [.. design.Converter.Capacitors.Select((c, i) => new StackedCapacitor(c.Device, c.Count, factor * Math.Exp(logarithms[i])))];
            StackedSwitch[] switches = [.. design.Converter.Switches.Select((s, i) => new StackedSwitch(s.Device, s.Count, Math.Exp(-logarithms[_capacitors + i]) / factor))];
            Converter values = mode.Converter.WithValues([.. capacitors.Select(c => c.Farads)], [.. switches.Select(s => s.Ohms)]);
            return new SizedConverter(values, switches, capacitors, null, s_process);
        }
    }
}
