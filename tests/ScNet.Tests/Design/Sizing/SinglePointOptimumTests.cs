using ScNet.Analysis;
using ScNet.Design.Sizing;
using ScNet.Devices;
using ScNet.Numerics;
using ScNet.Topologies;

namespace ScNet.Tests.Design.Sizing;

/// <summary>Published closed forms against a convex program over every single element, and sizes found against the closed forms.</summary>
/// <remarks>Source: M. D. Seeman and S. R. Sanders, 2008; H.-P. Le, S. R. Sanders and E. Alon, 2011 (both from memory).</remarks>
public sealed class SinglePointOptimumTests
{
    private const double Amperes = 0.05;

    public static TheoryData<string, int> Families => new()
    {
        { "series-parallel", 2 }, { "series-parallel", 4 }, { "ladder", 3 }, { "dickson", 5 }, { "fibonacci", 3 },
    };

    [Theory]
    [MemberData(nameof(Families))]
    public void Frequency_and_split_of_the_area_are_those_of_a_program_over_all_elements(string family, int size)
    {
        (double[] slow, double[] fast) = Coefficients(family, size);
        const double Density = 5e-3, Siemens = 2e9, Area = 1e-7, Joules = 3e-12;
        PosynomialBuilder loss = new(), area = new();
        int frequency = slow.Length + fast.Length;
        AddLosses(loss, slow, fast, Joules, frequency);
        for (int i = 0; i < frequency; i++)
        {
            area.Add(1 / (Area * (i < slow.Length ? Density : Siemens)), (i, 1));
        }

        GeometricOptimum optimum = Minimize(loss, [area.Build()], frequency + 1);
        SinglePointOptimum closed = SinglePointOptimum.OfArea(Law(slow, fast, Joules), Area, Density, Siemens);
        Assert.Equal(Math.Exp(optimum.LogValue), closed.LossWatts, 1e-8 * closed.LossWatts);
        Assert.Equal(Math.Exp(optimum.Logarithms[frequency]), closed.FrequencyHz, 1e-3 * closed.FrequencyHz);
        Assert.Equal(optimum.Logarithms.Take(slow.Length).Sum(Math.Exp), closed.Farads, 1e-3 * closed.Farads);
        Assert.Equal(Area, (closed.Farads / Density) + (closed.Siemens / Siemens), 1e-12 * Area);
    }

    [Theory]
    [MemberData(nameof(Families))]
    public void Three_equal_losses_are_those_of_a_program_over_all_elements(string family, int size)
    {
        (double[] slow, double[] fast) = Coefficients(family, size);
        const double Farads = 1e-9, Joules = 3e-12;
        PosynomialBuilder loss = new(), sum = new();
        int frequency = slow.Length + fast.Length;
        AddLosses(loss, slow, fast, Joules, frequency);
        for (int i = 0; i < slow.Length; i++)
        {
            sum.Add(1 / Farads, (i, 1));
        }

        GeometricOptimum optimum = Minimize(loss, [sum.Build()], frequency + 1);
        SinglePointOptimum closed = SinglePointOptimum.OfFrequencyAndConductance(Law(slow, fast, Joules), Farads);
        Assert.Equal(Math.Exp(optimum.LogValue), closed.LossWatts, 1e-8 * closed.LossWatts);
        double third = closed.LossWatts / 3;
        Assert.Equal(third, Law(slow, fast, Joules).Conduction / closed.Siemens, 1e-12 * third);
        Assert.Equal(third, closed.FrequencyHz * Joules * closed.Siemens, 1e-12 * third);
    }

    [Fact]
    public void At_the_best_frequency_charge_sharing_loses_as_much_as_what_swings()
    {
        SinglePointLaw law = new(2e-4, 3e-2, 0.1, 4e-12);
        SinglePointOptimum best = SinglePointOptimum.OfFrequency(law, 1e-9, 0.5);
        Assert.Equal(law.ChargeSharing / (best.Farads * best.FrequencyHz), best.FrequencyHz * ((0.1 * 1e-9) + (4e-12 * 0.5)), 1e-12);
        Assert.True(law.LossWatts(best.FrequencyHz * 1.01, 1e-9, 0.5) > best.LossWatts);
        Assert.True(law.LossWatts(best.FrequencyHz / 1.01, 1e-9, 0.5) > best.LossWatts);
    }

    [Theory]
    [MemberData(nameof(Families))]
    public void Capacitors_of_a_slow_converter_go_with_the_charge_they_cycle(string family, int size)
    {
        // wide switches whose gates cost nothing, no plates, but every cycle costs; two phases, so that √k is |a|
        ConverterAnalysis analysis = Analysis(family, size);
        double ratio = analysis.Modes[0].Require().Ratio.ToDouble();
        SizedDesign design = SizedDesign.Of(
            analysis, Ideal(gateCharge: 1e-25, perCycle: 1e-9), [new SizingPoint(Mode.DefaultName, 1, 0.9 * ratio, 1e-4)], new AreaBudget(null, 1e-8, 1e-5), new(1, 1e9));
        double[] charges = [.. analysis.Modes[0].Require().Capacitors.Select(c => Math.Abs(c.Charge[1].ToDouble()))];
        double[] farads = [.. design.Converter.Capacitors.Select(c => c.Farads)];
        Assert.All(Enumerable.Range(0, charges.Length), i => Assert.Equal(charges[i] / charges.Sum(), farads[i] / farads.Sum(), 2e-3));
    }

    [Theory]
    [MemberData(nameof(Families))]
    public void Switches_of_a_fast_converter_balance_their_conduction_with_their_gates(string family, int size)
    {
        // large capacitors at a given frequency, output free to follow: G = I √(κ/(γ f))
        ConverterAnalysis analysis = Analysis(family, size);
        const double Hertz = 1e8;
        SizedDesign design = SizedDesign.Of(
            analysis, Ideal(), [new SizingPoint(Mode.DefaultName, 1, null, Amperes)], new AreaBudget(null, 1e-3, 1e-3), new(Hertz, Hertz));
        ModeAnalysis mode = analysis.Modes[0].Require();
        for (int s = 0; s < mode.Converter.Switches.Count; s++)
        {
            // a charge of q W at V in every period, W = r G
            double joules = 1e-15 * 1000 * 1.0;
            double siemens = Amperes * Math.Sqrt(mode.FastSwitchingLimit.SwitchCoefficients[s].ToDouble() / (joules * Hertz));
            Assert.Equal(siemens, 1 / design.Converter.Converter.Switches[s].Ohms, 5e-3 * siemens);
        }

        Assert.True(design.Certificate!.RelativeGap < 1e-6);
        Assert.True(design.Certificate.IsTopologyDecided);
    }

    // one kind that withstands everything; junctions and area that do not count
    private static Process Ideal(double gateCharge = 1e-15, double perCycle = 0) => new()
    {
        Name = "ideal",
        Switches = [new()
        {
            Name = "switch",
            Source = "invented",
            RatedVolts = 100,
            GateDriveVolts = 1,
            GateRatedVolts = 2,
            OnResistanceOhmMicrometres = 1000,
            GateChargeCoulombsPerMicrometre = gateCharge,
            JunctionChargeCoulombsPerMicrometre = 1e-25,
            AreaSquareMetresPerMicrometre = 1e-12,
        }],
        Capacitors = [new() { Name = "capacitor", Source = "invented", RatedVolts = 100, FaradsPerSquareMetre = 10e-3 }],
        Control = new() { CoulombsPerCycle = perCycle },
    };

    private static ConverterAnalysis Analysis(string family, int size) => ConverterAnalysis.Of(family switch
    {
        "series-parallel" => SeriesParallel.StepDown(size),
        "ladder" => Ladder.StepDown(size),
        "dickson" => Dickson.StepDown(size),
        _ => Fibonacci.StepDown(size),
    });

    private static (double[] Slow, double[] Fast) Coefficients(string family, int size)
    {
        ModeAnalysis mode = Analysis(family, size).Modes[0].Require();
        return ([.. mode.SlowSwitchingLimit.Coefficients.Select(k => k.ToDouble())], [.. mode.FastSwitchingLimit.SwitchCoefficients.Select(k => k.ToDouble())]);
    }

    private static SinglePointLaw Law(double[] slow, double[] fast, double joules)
    {
        double ofSlow = slow.Sum(Math.Sqrt), ofFast = fast.Sum(Math.Sqrt);
        return new SinglePointLaw(Amperes * Amperes * ofSlow * ofSlow, Amperes * Amperes * ofFast * ofFast, 0, joules);
    }

    private static void AddLosses(PosynomialBuilder loss, double[] slow, double[] fast, double joules, int frequency)
    {
        for (int i = 0; i < slow.Length; i++)
        {
            loss.Add(Amperes * Amperes * slow[i], (i, -1), (frequency, -1));
        }

        for (int s = 0; s < fast.Length; s++)
        {
            loss.Add(Amperes * Amperes * fast[s], (slow.Length + s, -1));
            loss.Add(joules, (slow.Length + s, 1), (frequency, 1));
        }
    }

    private static GeometricOptimum Minimize(PosynomialBuilder loss, LogConvexFunction[] constraints, int variables)
    {
        double[] lower = [.. Enumerable.Repeat(-40.0, variables)], upper = [.. Enumerable.Repeat(40.0, variables)];
        GeometricOptimum optimum = new GeometricProgram(loss.Build(), constraints, lower, upper).Minimize(new double[variables]);
        Assert.InRange(optimum.Gap, 0, 1e-8);
        return optimum;
    }
}
