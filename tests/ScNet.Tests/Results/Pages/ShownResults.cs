using ScNet.Analysis;
using ScNet.Design;
using ScNet.Design.Choice;
using ScNet.Design.Losses;
using ScNet.Design.Maps;
using ScNet.Design.Regulation;
using ScNet.Design.Requirements;
using ScNet.Design.Sizing;
using ScNet.Devices;
using ScNet.Netlists;
using ScNet.Reconfiguration;
using ScNet.Results;
using ScNet.Results.Pages;
using ScNet.SteadyState;
using ScNet.SteadyState.Conduction;
using ScNet.Stress;
using ScNet.Tests.Design.Choice;
using ScNet.Tests.Design.Losses;
using ScNet.Tests.Design.Maps;
using ScNet.Tests.SteadyState.Conduction;
using ScNet.Topologies;

namespace ScNet.Tests.Results.Pages;

/// <summary>Results from which every type of the library can be reached.</summary>
internal static class ShownResults
{
    public static IEnumerable<object> All()
    {
        Converter gears = Read("memory-gears"), rails = Read("two-rails"), stage = Read("four-level-stage"), dickson = Read("dickson-5"), plated = Plated();
        ConverterAnalysis analysis = ConverterAnalysis.Of(gears);
        ModeAnalysis half = ModeAnalysis.Of(plated);
        OperatingPoint point = new(3.6, 0.01, 1e7);
        ConverterStress stress = ConverterStress.Of(analysis, new Interval<double>(2.8, 4.2));
        ConverterRatings ratings = ConverterRatings.Of(stress, new RatingLimits { Switch = DemoDevices.NType1V8, Capacitor = DemoDevices.Plate3V6, MaximumSwitchesInSeries = 2 });
        ComparisonConditions conditions = new(3.6, 0.9);
        OutputImpedance impedance = OutputImpedance.Of(half);
        SteadyStateModel model = SteadyStateModel.Of(half), ofRails = SteadyStateModel.Of(ModeAnalysis.Of(rails));
        ComponentTolerances tolerances = new(capacitance: 0.2, onResistance: 0.3);
        LossBudget budget = LossModel.Of(Sized.Of(plated), half).At(point);
        OperatingMap map = OperatingMap.Of(InventedGears.All, [2, 3, 4], [1.2], [1e-3]);
        SinglePointLaw law = new(1e-3, 1e-3, 1e-3, 1e-3);
        PeriodicSteadyState steady = PeriodicSteadyState.Of(half, point);
        return
        [
            gears, rails, stage, plated, analysis, ConverterAnalysis.Of(rails), ModeAnalysis.Of(stage), PhaseGraph.Of(half, 1),
            stress, ratings, ConverterGateDrive.Of(ratings), stress.FindOrder(), ScNet.Results.RatedStress.Of(null, ratings), GateNeeds.Of(null, ConverterGateDrive.Of(ratings)), StackGateLevels.Of(DemoDevices.NType1V2, 1, 0, 1.2),
            ModeComparison.Of(half, conditions), SiliconComparison.Of(SiliconComparison.Rate(ConverterAnalysis.Of(plated), conditions), Mode.DefaultName, conditions), ComparedLoad.Of(half, conditions, 1e-3),
            new ComparedMode(ModeComparison.Of(half, conditions)), ResultRow.Of("a.toml", half.Outcome, new OperatedMode(steady, budget)), ResultRow.Of("a.toml", half.Outcome, new SweptMode(new(1, 2), point, steady)),
            new ToleratedMode(1e6, ImpedanceTolerance.WorstCase(half, 1e6, tolerances), ImpedanceTolerance.MonteCarlo(half, 1e6, tolerances, 5, 1)),
            impedance, impedance.At(1e6), model, model.SensitivityAt(1e6), model.TwoPortSensitivityAt(1e6), model.At(point), ofRails.MultiPort, ofRails.MultiPort.At(1e6), ofRails.MultiPort.At(1e6).Operate(3.6, 1e-3, 1e-3, 1e-3), tolerances,
            PeriodicSteadyState.Of(ModeAnalysis.Of(stage), new OperatingPoint(3.6, 0.1, 2e6)), Interleaving.Of(plated, plated.Modes[0], point, 2), SplitPhase.Of(dickson, dickson.Modes[0]),
            LoadStep.Of(ModeAnalysis.Of(Loaded()), new OperatingPoint(3, 0, 1e6), 0.01, 1e-6), ConductionModel.Of(Stages.StepDown(new(3, 10), 0.02)), ConductionModel.Of(Stages.StepDown(new(3, 10), 0.02)).At(new OperatingPoint(10, 0.1, 1e5)),
            ConductionModel.Of(Stages.WithDeadTimes(1e-3)).At(new(10, 0, 1e5)),
            budget, LossBudget.Formulas, LossModel.Of(Sized.Of(plated), half), LossModel.Of(Sized.Bare(stage), ModeAnalysis.Of(stage)).At(new OperatingPoint(3.6, 0.02, 2e5)), Sized.Of(stage), InventedGears.Half, InventedGears.Half.Hold(3, 1.2, 1e-3), ModeSchedule.Of(InventedGears.All, new(2.8, 4.2), 1.2, 1e-3, 0, 0),
            map, GearCounts.Of(map), MissingModes.Of(map), LifeEstimate.Of(InventedGears.All, [new(1, 4), new(0, 3)], [new("on", 0.01, 1, 1.2)], 0, 36), new LifeEnd(0.1, 3, new("on", 1, 1), ["too low"]),
            CoreRequirement.Of(), CoreRequirement.Of().Process, RequirementReader.ReadFile(RepositoryFiles.PathOf("docs", "examples", "core-requirement.toml")), NetlistReader.ReadFile(RepositoryFiles.PathOf("docs", "examples", "half.toml")),
            Candidates.Of(CoreRequirement.Of()), Choice(), ChoiceSensitivity.Of(RankedChoice.Of(CoreRequirement.Of(), [Candidate.Linear])), Curve(), law, SinglePointOptimum.OfFrequency(law, 1e-9, 1), new SizeGrid(1, 1), new SizingOptions(),
            ReachableRatios.Of(SeriesParallel.StepDown(2)), Overlay.Of("Both", [SeriesParallel.StepDown(2), Ladder.StepDown(3)]), FamilyCatalogue.All, new FamilyRequest(FamilyCatalogue.All[0], [3], IsStepUp: true), new FamilyOptions(),
            Findings(), new PageFigure("a", "b"), new PageColumn("a", IsFigure: false), new PageCell("a"),
        ];
    }

    private static Converter Read(string name) => NetlistReader.ReadFile(RepositoryFiles.PathOf("docs", "examples", $"{name}.toml")).GetConverter();

    private static Converter Plated() => Converter.Create("Plated").Input("vin").Output("vout")
        .Capacitor("fly", "p", "n", farads: 1e-9, plates: new CapacitorPlates(BottomFarads: 3e-11, TopFarads: 1e-11)).Parasitic("pad", "p", "gnd", 1e-12)
        .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2)
        .Build();

    private static Converter Loaded() => Converter.Create("Loaded").Input("vin").Output("vout", LoadKind.Current)
        .Capacitor("fly", "p", "n", farads: 1e-9).Capacitor("out", "vout", "gnd", farads: 1e-8)
        .Switch("s1", "vin", "p", on: 1).Switch("s2", "n", "vout", on: 1).Switch("s3", "p", "vout", on: 2).Switch("s4", "n", "gnd", on: 2)
        .Build();

    private static RankedChoice Choice() => RankedChoice.Of(
        CoreRequirement.Of(), [Candidate.Linear, Candidate.Of(SeriesParallel.StepDown(3)), Candidate.Of(SeriesParallel.StepDown(4))]);

    public static IReadOnlyList<Diagnostic> Findings()
    {
        Assert.False(Converter.Create("Without").TryBuild(out _, out IReadOnlyList<Diagnostic> findings));
        return findings;
    }

    // one area that is enough, and one that is not
    private static TradeOffCurve Curve()
    {
        Process process = new() { Name = "invented", Switches = [DemoDevices.NType1V2, DemoDevices.NType1V8], Capacitors = [DemoDevices.Dense1V2, DemoDevices.Plate3V6] };
        return TradeOffCurve.Of(ConverterAnalysis.Of(Read("core-gears")), process, [new("1/3", 2.8, 0.8, 20e-3, 1)], [new(0.25e-6), new(1e-9)], new(100e3, 200e6));
    }
}
