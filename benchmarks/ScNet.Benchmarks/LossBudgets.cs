using BenchmarkDotNet.Attributes;
using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Devices;
using ScNet.SteadyState;
using ScNet.Topologies;

namespace ScNet.Benchmarks;

/// <summary>
/// The losses of a 5:1 Dickson converter of invented devices at one operating point, against the exact periodic steady state
/// of the network with plates and junctions, prepared once as well, whose elements' losses are added up.
/// </summary>
public class LossBudgets
{
    private readonly double[] _watts = new double[LossModel.KindCount];
    private readonly SizedConverter _sized = Size();
    private readonly OperatingPoint _point = new(5, 0.01, 20e6);
    private ModeAnalysis? _analysis;
    private LossModel? _model;
    private SteadyStateModel? _exact;
    private double _ohms;

    /// <summary>Prepares both ways and makes sure that they tell of the same losses, without load but for the plates' share.</summary>
    [GlobalSetup]
    public void RequireAgreement()
    {
        _analysis = ModeAnalysis.Of(_sized.Converter);
        _model = (LossModel)SetUp();
        Converter plated = _sized.Converter.WithParasitics([.. _sized.Capacitors.Select(c => c.Device)], [.. _sized.Switches.Select(s => s.Device)]);
        _exact = SteadyStateModel.Of(ModeAnalysis.Of(plated));
        _ohms = _model.Impedance.Ohms(_point.FrequencyHz);
        OperatingPoint unloaded = new(_point.InputVoltageVolts, 0, _point.FrequencyHz);
        LossBudget budget = _model.At(unloaded);
        double swings = budget.WattsOf(LossKind.Plates) + budget.WattsOf(LossKind.Junctions), lost = _exact.At(unloaded).DissipationWatts;
        if (!(Math.Abs(swings - lost) < 0.1 * lost))
        {
            throw new InvalidOperationException($"Expected {lost} W, but got {swings} W.");
        }
    }

    /// <summary>What is done once per mode and sizes.</summary>
    [Benchmark]
    public object SetUp() => LossModel.Of(_sized, _analysis!);

    /// <summary>A budget with output voltage, efficiency and all kinds of losses.</summary>
    [Benchmark(Baseline = true)]
    public double? Budget() => _model!.At(_point).Efficiency;

    /// <summary>The same with every loss by element.</summary>
    [Benchmark]
    public int BudgetByElement() => _model!.At(_point).Losses.Count;

    /// <summary>The losses by kind alone, the impedance at hand.</summary>
    [Benchmark]
    public double WattsByKind()
    {
        _model!.WattsAt(_point.InputVoltageVolts, _point.LoadCurrentAmperes, _point.FrequencyHz, _ohms, _watts);
        return _watts[0];
    }

    /// <summary>The exact periodic steady state and its losses by element.</summary>
    [Benchmark]
    public double PeriodicSteadyState()
    {
        PeriodicSteadyState state = _exact!.At(_point);
        return state.Switches.Sum(s => s.DissipationWatts) + state.Capacitors.Sum(c => c.DissipationWatts);
    }

    private static SizedConverter Size()
    {
        Converter family = Dickson.StepDown(5);
        Converter converter = family.WithValues([.. family.Capacitors.Select(_ => 1e-9)], [.. family.Switches.Select(_ => 2.0)]);
        Process process = new() { Name = "demo", Switches = [DemoDevices.NType1V8], Capacitors = [DemoDevices.Plate3V6] };
        return new SizedConverter(
            converter,
            [.. converter.Switches.Select(s => new StackedSwitch(DemoDevices.NType1V8, 1, s.Ohms))],
            [.. converter.Capacitors.Select(c => new StackedCapacitor(DemoDevices.Plate3V6, 1, c.Farads))],
            null,
            process);
    }
}
