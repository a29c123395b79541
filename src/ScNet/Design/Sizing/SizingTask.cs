using ScNet.Analysis;
using ScNet.Devices;

namespace ScNet.Design.Sizing;

/// <summary>What is asked of sizes, with what does not change while they are looked for.</summary>
internal sealed class SizingTask
{
    private readonly Dictionary<string, int> _modes;
    private readonly Lazy<SizedMode[]> _atUnequalSizes;

    public SizingTask(
        ConverterAnalysis analysis,
        Process process,
        IReadOnlyList<SizingPoint> points,
        AreaBudget area,
        Interval<double> frequencyHz,
        SizingOptions how,
        ElementOptions options)
    {
        Analysis = analysis;
        Process = process;
        Area = area;
        FrequencyHz = frequencyHz;
        Grid = how.Grid;
        Criterion = how.Criterion;
        Options = options;
        Converter = analysis.Converter.ParasiticBranches.Count == 0
            ? analysis.Converter
            : analysis.Converter.WithParasitics([.. analysis.Converter.Capacitors.Select(_ => CapacitorPlates.None)], []);
        string[] names = [.. points.Select(p => p.Mode).Distinct(StringComparer.Ordinal)];
        _modes = names.Select((name, m) => (name, m)).ToDictionary(p => p.name, p => p.m, StringComparer.Ordinal);
        Modes = [.. names.Select(n => analysis.Modes[n].Require())];
        Costs = [.. Modes.Select(m => ModeCosts.Of(m, process, options))];
        Points = [.. points];
        _atUnequalSizes = new(() => [.. Modes.Select(m => SizedMode.Of(m, Unequal(Converter), FrequencyHz, 0))]);
    }

    public ConverterAnalysis Analysis { get; }

    /// <summary>The converter without parasitic capacitances, which count by formula.</summary>
    public Converter Converter { get; }

    public Process Process { get; }

    public SizingPoint[] Points { get; }

    public AreaBudget Area { get; }

    public Interval<double> FrequencyHz { get; }

    public SizeGrid Grid { get; }

    public DeviceCriterion Criterion { get; }

    public ElementOptions Options { get; }

    /// <summary>The analyses of the modes that points name.</summary>
    public ModeAnalysis[] Modes { get; }

    /// <summary>What the elements cost in each of them.</summary>
    public ModeCosts[] Costs { get; }

    public int CapacitorCount => Converter.Capacitors.Count;

    /// <summary>Capacitors, then switches.</summary>
    public int ElementCount => Converter.Capacitors.Count + Converter.Switches.Count;

    /// <summary>The position of a point's mode in <see cref="Modes"/>.</summary>
    public int ModeOf(SizingPoint point) => _modes[point.Mode];

    /// <summary>
    /// Whether an element carries charge in a mode at some sizes. Where component values decide the flow, a branch between equal halves carries none at
    /// equal sizes: so it is asked at sizes that nothing makes alike.
    /// </summary>
    /// <param name="mode">The position of the mode in <see cref="Modes"/>.</param>
    /// <param name="element">The position of the element, capacitors first.</param>
    public bool Uses(int mode, int element) => _atUnequalSizes.Value[mode].Uses(element);

    /// <summary>The options of an element.</summary>
    public int OptionCount(int element) => element < CapacitorCount ? Options.Capacitors[element].Length : Options.Switches[element - CapacitorCount].Length;

    /// <summary>The area of an element as a function of its value.</summary>
    public AreaLaw AreaOf(int element, int option) => element < CapacitorCount
        ? AreaLaw.Of(Options.Capacitors[element][option])
        : AreaLaw.Of(Options.Switches[element - CapacitorCount][option]);

    /// <summary>The least value of an element: one step of the grid.</summary>
    public double LeastValue(int element, int option)
    {
        if (element < CapacitorCount)
        {
            ElementOption<CapacitorDevice> capacitor = Options.Capacitors[element][option];
            return Grid.CapacitorSquareMetres * capacitor.FaradsPerSquareMetre() / capacitor.Count;
        }

        ElementOption<SwitchDevice> own = Options.Switches[element - CapacitorCount][option];
        return Grid.WidthMicrometres / (own.Count * own.Device.OnResistanceOhmMicrometres);
    }

    /// <summary>The series resistance times the capacitance of an element, in seconds; zero for a switch.</summary>
    public double EsrSeconds(int element, int option) => element < CapacitorCount
        ? Options.Capacitors[element][option].Device.EsrOhmSquareMetres * Options.Capacitors[element][option].FaradsPerSquareMetre()
        : 0;

    /// <summary>The impedance in ohms that holds the output at a point, or infinity where the output may follow.</summary>
    public double NeededOhms(SizingPoint point)
    {
        if (point.OutputVolts is not { } output)
        {
            return double.PositiveInfinity;
        }

        return (Math.Abs(Modes[ModeOf(point)].Ratio.ToDouble() * point.InputVolts) - Math.Abs(output)) / point.LoadAmperes;
    }

    /// <summary>The converter and its devices at chosen options and values.</summary>
    public Losses.SizedConverter Build(int[] options, double[] values) => SizedValues.Build(
        Analysis.Converter,
        Process,
        [.. Options.Capacitors.Select((o, e) => o[options[e]])],
        [.. Options.Switches.Select((o, s) => o[options[CapacitorCount + s]])],
        values[..CapacitorCount],
        [.. values[CapacitorCount..].Select(g => 1 / g)],
        []);

    // multiples of the golden ratio without their whole parts lie evenly between 0 and 1, no two alike (common practice, no source)
    private static Converter Unequal(Converter converter)
    {
        int element = 0;
        double Next() => 1 + (++element * 0.6180339887498949 % 1);
        return converter.WithValues(
            [.. converter.Capacitors.Select(_ => Next())], [.. converter.Switches.Select(_ => Next())], [.. converter.Capacitors.Select(c => c.EsrOhms > 0 ? Next() : 0)]);
    }
}
