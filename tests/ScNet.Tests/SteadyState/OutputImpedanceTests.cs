using ScNet.Analysis;
using ScNet.Netlists;
using ScNet.SteadyState;
using ScNet.Topologies;

namespace ScNet.Tests.SteadyState;

/// <summary>The public face: arguments, estimates beside the exact value, allocation and threads.</summary>
[Trait("Kind", "Law")]
public sealed class OutputImpedanceTests
{
    private static readonly double[] s_frequenciesHz = [.. Enumerable.Range(-30, 61).Select(k => Math.Pow(10, k / 10.0))];

    public static TheoryData<string> Names => ["ladder 10:1", "three phases", "current load", "parallel"];

    [Theory]
    [MemberData(nameof(Names))]
    public void Further_frequencies_allocate_nothing(string name)
    {
        OutputImpedance impedance = Make(name);
        double[] ohms = new double[s_frequenciesHz.Length];
        impedance.Sweep(s_frequenciesHz, ohms);
        double sum = impedance.Ohms(1);
        long before = GC.GetAllocatedBytesForCurrentThread();
        impedance.Sweep(s_frequenciesHz, ohms);
        foreach (double f in s_frequenciesHz)
        {
            sum += impedance.Ohms(f);
        }

        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
        Assert.True(double.IsFinite(sum));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Many_threads_at_once_get_the_same_bits(string name)
    {
        OutputImpedance impedance = Make(name);
        double[] expected = new double[s_frequenciesHz.Length];
        impedance.Sweep(s_frequenciesHz, expected);
        Parallel.For(0, 64, i =>
        {
            double[] actual = new double[expected.Length];
            (i % 2 == 0 ? impedance : Make(name)).Sweep(s_frequenciesHz, actual);
            Assert.Equal(expected, actual);
        });
    }

    [Fact]
    public void A_sweep_is_the_same_as_its_points()
    {
        OutputImpedance impedance = Make("three phases");
        double[] ohms = new double[s_frequenciesHz.Length + 1];
        ohms[^1] = -1;
        impedance.Sweep(s_frequenciesHz, ohms);
        Assert.Equal([.. s_frequenciesHz.Select(impedance.Ohms), -1], ohms);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(1e-70)]
    [InlineData(1e70)]
    [InlineData(double.PositiveInfinity)]
    public void A_frequency_must_be_positive_and_finite(double frequencyHz)
    {
        OutputImpedance impedance = Make("three phases");
        Assert.Throws<ArgumentOutOfRangeException>(() => impedance.Ohms(frequencyHz));
        Assert.Throws<ArgumentOutOfRangeException>(() => impedance.At(frequencyHz));
        Assert.Throws<ArgumentOutOfRangeException>(() => impedance.Sweep([1, frequencyHz], new double[2]));
    }

    [Fact]
    public void A_sweep_needs_room() =>
        Assert.Throws<ArgumentException>(() => Make("parallel").Sweep([1, 2], new double[1]));

    [Fact]
    public void A_mode_without_a_result_says_why()
    {
        Converter converter = Converter.Create("short").Input("vin").Output("vout").Capacitor("c", "vout", "gnd")
            .Switch("s", "vin", "gnd", on: 1).Switch("t", "vin", "vout", on: 2).Build();
        Assert.Throws<ScNetException>(() => OutputImpedance.Of(ModeAnalysis.Of(converter, converter.Modes[0])));
        Assert.Throws<ArgumentNullException>(() => OutputImpedance.Of(null!));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Frequencies_of_any_size_give_finite_numbers(string name)
    {
        OutputImpedance impedance = Make(name);
        for (int exponent = -60; exponent <= 60; exponent += 5)
        {
            double ohms = impedance.Ohms(Math.Pow(10, exponent));
            Assert.True(double.IsFinite(ohms) && ohms > 0, $"1e{exponent} Hz: {ohms}");
        }
    }

    /// <summary>A loop of switches that moves no capacitor, and a phase whose resistors see no voltage at all.</summary>
    [Fact]
    public void Loops_without_capacitors_stay_harmless_at_the_lowest_frequencies()
    {
        NetworkSketch sketch = new(
            5,
            [new(1, 9), new(2, 9), new(7, 18), new(5, 18)],
            [new(1, 2, 1.903225806451613, 0)],
            [
                new(2, 3, 9, 3.8153641363118282), new(3, 4, 11, 2), new(4, 1, 3, 3.2950330601743), new(4, 2, 14, 3.13953488372093),
                new(4, 3, 4, 1.1126760563380282), new(1, 4, 3, 2.78125), new(2, 3, 4, 1),
            ],
            LoadKind.Current);
        OutputImpedance impedance = OutputImpedance.Of(LawSample.Analyse(sketch));
        for (int exponent = -60; exponent <= 0; exponent++)
        {
            Assert.True(double.IsFinite(impedance.Ohms(Math.Pow(10, exponent))), $"1e{exponent} Hz");
        }
    }

    [Fact]
    public void Frequencies_of_any_size_give_finite_numbers_on_random_networks() => LawSample.Check((_, analysis) =>
    {
        OutputImpedance impedance = OutputImpedance.Of(analysis);
        double fast = analysis.FastSwitchingLimit.Ohms;
        foreach (double f in new[] { 1e-60, 1e-31, 1e-17, 1e-9, 1e9, 1e17, 1e31, 1e60 })
        {
            double ohms = impedance.Ohms(f);
            Assert.True(double.IsFinite(ohms) && ohms > 0, $"{f:R} Hz: {ohms}");
            Assert.True(f < 1 || Math.Abs(ohms - fast) < 1e-9 * fast, $"{f:R} Hz: {ohms:R}, but the fast limit is {fast:R}");
        }
    });

    /// <summary>At the corner, where both limits are one ohm, the estimates are known numbers.</summary>
    [Fact]
    public void Estimates_stand_beside_the_exact_value()
    {
        Converter converter = SeriesParallel.StepDown(2, farads: 1, ohms: 0.5);
        OutputImpedance impedance = OutputImpedance.Of(ModeAnalysis.Of(converter, converter.Modes[0]));
        Assert.Equal(0.25, impedance.CornerFrequencyHz, 1e-15);
        ImpedancePoint point = impedance.At(0.25);
        Assert.Equal(0.25, point.FrequencyHz);
        Assert.Equal(1, point.SlowOhms, 1e-15);
        Assert.Equal(1, point.FastOhms, 1e-15);
        Assert.Equal(1 / Math.Tanh(1), point.Ohms, 1e-14);
        Assert.Equal(Math.Sqrt(2), point.RootSumSquareOhms, 1e-14);
        Assert.Equal(Math.Pow(2, 1 / 2.54), point.Norm254Ohms, 1e-14);
        Assert.Equal(1 / Math.Tanh(1), point.SinglePairOhms, 1e-14);
        Assert.Equal((Math.Sqrt(2) * Math.Tanh(1)) - 1, point.RootSumSquareError, 1e-14);
        Assert.Equal((Math.Pow(2, 1 / 2.54) * Math.Tanh(1)) - 1, point.Norm254Error, 1e-14);
        Assert.Equal(0, point.SinglePairError, 1e-14);
    }

    private static OutputImpedance Make(string name)
    {
        Converter converter = name switch
        {
            "ladder 10:1" => Ladders.Of(10, hasTopCapacitor: true),
            "three phases" => NetlistReader.ReadFile(RepositoryFiles.PathOf("docs", "examples", "three-phase-4.toml")).GetConverter(),
            "current load" => Ladder.StepDown(3, load: LoadKind.Current),
            _ => Fibonacci.StepUp(3),
        };
        return OutputImpedance.Of(ModeAnalysis.Of(converter, converter.Modes[0]));
    }
}
