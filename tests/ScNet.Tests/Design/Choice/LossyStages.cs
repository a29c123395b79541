using ScNet.Analysis;
using ScNet.Design.Choice;
using ScNet.Design.Losses;
using ScNet.Design.Sizing;
using ScNet.Devices;
using ScNet.Stress;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Choice;

/// <summary>Stages with inductors of devices that lose in every way that there is. Every value is invented.</summary>
internal static class LossyStages
{
    public static InductorDevice Coil { get; } = new()
    {
        Name = "coil",
        Source = "invented",
        Henries = 1e-6,
        Ohms = 0.1,
        CoreWatts = 1e-2,
        CoreFrequencyExponent = 1.6,
        CoreRippleExponent = 2.3,
    };

    public static SwitchDevice Switch { get; } = DemoDevices.NType1V8 with
    {
        Name = "n 5 V",
        RatedVolts = 5,
        GateDriveVolts = 1.5,
        GateRatedVolts = 6,
        LeakageAmperesPerMicrometre = 1e-9,
        RecoveryCoulombsPerMicrometre = 1e-15,
    };

    public static CapacitorDevice Capacitor { get; } = DemoDevices.Plate3V6 with { Name = "plate 5 V", RatedVolts = 5, TopPlateFraction = 0.01, LeakageAmperesPerSquareMetre = 1 };

    /// <summary>One kind of capacitor, and of switches one with one half of the resistance and another one beside it.</summary>
    public static Process Process { get; } = new()
    {
        Name = "lossy",
        Switches = [Switch, Switch with { Name = "wide n 5 V", OnResistanceOhmMicrometres = 500, AreaSquareMetresPerMicrometre = 2e-12 }],
        Capacitors = [Capacitor],
        Inductors = [Coil],
        GateRailEfficiency = 0.8,
        DeadTimeSeconds = 2e-9,
        Control = new ControlOverhead { FixedWatts = 1e-5, CoulombsPerCycle = 1e-11 },
    };

    public static Candidate StepDown { get; } = StageCandidates.StepDown();

    public static Candidate ThreeLevel { get; } = StageCandidates.FlyingCapacitor(3);

    /// <summary>Charge moves in impulses between its capacitors.</summary>
    public static Candidate FedLadder { get; } = StageCandidates.Fed(Ladder.StepDown(3));

    public static ElementOptions Options(Candidate candidate, Process process) =>
        ElementOptions.Of(ConverterStress.Of(candidate.Analysis!, new Interval<double>(3, 3.6)), process);

    /// <summary>A point at a duty with what its elements cost there.</summary>
    public static StagePoint PointOf(Candidate candidate, Process process, int node, double volts, double amperes, double weight)
    {
        InductorDevice[] coils = [.. candidate.Converter!.Inductors.Select(_ => process.Inductors[0])];
        StageCosts costs = StageCosts.Of(candidate.Duties.AnalysisAt(node), process, Options(candidate, process), coils);
        double ratio = candidate.Duties.RatioAt(node);
        return new StagePoint(new ProfilePoint(volts, ratio * volts, amperes, weight, IsEnd: false), weight, node, costs);
    }

    /// <summary>The stage at a duty with values.</summary>
    public static SizedConverter Sized(Candidate candidate, Process process, int node, int[] chosen, double[] values)
    {
        ElementOptions options = Options(candidate, process);
        int capacitors = options.Capacitors.Length;
        return SizedValues.Build(
            candidate.Duties.AnalysisAt(node).Converter, process,
            [.. options.Capacitors.Select((o, c) => o[chosen[c]])], [.. options.Switches.Select((o, s) => o[chosen[capacitors + s]])],
            values[..capacitors], [.. values[capacitors..].Select(g => 1 / g)], [.. candidate.Converter!.Inductors.Select(_ => process.Inductors[0])]);
    }

    /// <summary>What is lost always, and what cycles at a current and a frequency lose, without what ripple and load conduct together.</summary>
    public static (double Always, double Running) WattsOf(SizedConverter sized, ModeAnalysis analysis, double volts, double amperes, double hertz)
    {
        ModeAnalysis own = analysis.WithValuesOf(sized.Converter);
        LossTerms losses = LossTerms.Of(sized, own);
        double always = losses.Terms.Sum(t => t.Watts.Constant + (t.Watts.Volts * volts) + (t.Watts.Volts2 * volts * volts));
        double terms = losses.Terms.Sum(t =>
            (t.Watts.Current2 * amperes * amperes) + (t.Watts.Volts2PerHertz2 * volts * volts / (hertz * hertz))
            + (hertz * (t.Watts.Hertz + (t.Watts.HertzVolts * volts) + (t.Watts.HertzVolts2 * volts * volts))));
        double sharing = (own.ChargeSharing?.OhmsAtOneHertz ?? 0) * amperes * amperes / hertz;
        double diodes = losses.Diodes.Sum(d => hertz * sized.Process.DeadTimeSeconds * d.DiodeVolts * Math.Abs(d.PerAmpere) * amperes);
        return (always, terms + sharing + diodes + losses.Cores.Sum(c => c.At(volts, hertz)));
    }
}
