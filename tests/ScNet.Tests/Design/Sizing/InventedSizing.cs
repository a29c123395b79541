using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Design.Sizing;
using ScNet.Devices;
using ScNet.Stress;
using ScNet.Tests.Design.Losses;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Sizing;

/// <summary>What is asked of sizes, put together by hand: a halver and others of invented devices.</summary>
internal static class InventedSizing
{
    /// <summary>One flying capacitor and four switches, half of the input at the output.</summary>
    public static ConverterAnalysis Halver { get; } = ConverterAnalysis.Of(SeriesParallel.StepDown(2));

    /// <summary>From 0.1 MHz to 100 MHz.</summary>
    public static Interval<double> Frequencies { get; } = new(1e5, 1e8);

    /// <summary>One kind of switch and one of capacitor.</summary>
    public static Process Process(SwitchDevice? @switch = null, CapacitorDevice? capacitor = null) =>
        new() { Name = "invented", Switches = [@switch ?? Sized.Switch], Capacitors = [capacitor ?? Sized.Capacitor] };

    /// <summary>A point of the only mode.</summary>
    public static SizingPoint Point(double inputVolts, double? outputVolts, double amperes, double weight = 1) => new(Mode.DefaultName, inputVolts, outputVolts, amperes, weight);

    /// <summary>The task.</summary>
    public static SizingTask Task(
        ConverterAnalysis analysis, SizingPoint[] points, AreaBudget area, Process? process = null, Interval<double>? frequencyHz = null, SizingOptions? how = null)
    {
        process ??= Process();
        Interval<double> input = new(points.Min(p => p.InputVolts), points.Max(p => p.InputVolts));
        return new SizingTask(analysis, process, points, area, frequencyHz ?? Frequencies, how ?? new(), ElementOptions.Of(ConverterStress.Of(analysis, input), process));
    }

    /// <summary>A converter whose switches have given widths and whose capacitors given areas.</summary>
    public static SizedConverter OfSteps(Converter converter, Process process, double[] squareMetres, double[] micrometres)
    {
        (SwitchDevice @switch, CapacitorDevice capacitor) = (process.Switches[0], process.Capacitors[0]);
        double[] farads = [.. squareMetres.Select(a => a * capacitor.FaradsPerSquareMetre)], ohms = [.. micrometres.Select(w => @switch.OnResistanceOhmMicrometres / w)];
        return new SizedConverter(
            converter.WithValues(farads, ohms),
            [.. ohms.Select(r => new StackedSwitch(@switch, 1, r))],
            [.. farads.Select(c => new StackedCapacitor(capacitor, 1, c))],
            null,
            process);
    }
}
