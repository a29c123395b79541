using System.Runtime.CompilerServices;
using CsCheck;
using ScNet.Analysis;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>The impedance over the whole range of frequencies that is allowed, with values twelve decades apart.</summary>
[Trait("Kind", "Law")]
public sealed class FrequencyRangeLaws
{
    private static readonly double[] s_frequenciesHz = [1e-60, 1e-40, 1e-25, 1e-19, 1e-12, 1e-6, 1, 1e6, 1e12, 1e19, 1e25, 1e40, 1e60];

    private static readonly Gen<double[]> s_decades = Gen.Double[-6, 6].Array[40];

    [Fact]
    public void The_impedance_is_a_positive_number_at_every_frequency_that_is_allowed() => Check((analysis, impedance) =>
    {
        foreach (double frequencyHz in s_frequenciesHz)
        {
            double ohms = impedance.Ohms(frequencyHz);
            Assert.True(ohms > 0 && double.IsFinite(ohms), $"{ohms} Ω at {frequencyHz} Hz");
        }
    });

    [Fact]
    public void At_the_ends_of_the_range_the_impedance_is_that_of_the_limits() => Check((analysis, impedance) =>
    {
        double fast = analysis.FastSwitchingLimit.Ohms;
        Assert.Equal(fast, impedance.Ohms(1e60), 1e-9 * fast);
        double slow = analysis.SlowSwitchingLimit.OhmsAtOneHertz;
        double largest = analysis.Converter.Capacitors.Select(c => c.ElastancePerFarad).DefaultIfEmpty().Max();

        // a sum of squares this small is a charge that rounding left over
        if (analysis.Converter.Load == LoadKind.Stiff && slow > 1e-24 * largest)
        {
            Assert.Equal(slow, impedance.Ohms(1e-60) * 1e-60, 1e-6 * slow);
        }
    },

        // time constants 1e16 apart beside switches side by side, whose sharing no capacitor sees
        ["c8QP4pC3O9YmJizy3"]);

    private static void Check(Action<ModeAnalysis, OutputImpedance> law, string[]? found = null, [CallerMemberName] string name = "")
    {
        int checkedCount = 0;
        Gen.Select(RandomNetworks.Any, s_decades, SpreadLaws.Spread).Holds(
            sketch =>
            {
                if (LawSample.Try(sketch).Analysis is { FastSwitchingLimit.Ohms: > 0 } analysis)
                {
                    Interlocked.Increment(ref checkedCount);
                    law(analysis, OutputImpedance.Of(analysis));
                }
            },
            count: 2000,
            print: x => x.ToString(),
            found: found,
            name: name);
        Assert.True(LawCheck.IsOneCase || checkedCount >= 400, $"Only {checkedCount} networks had a result.");
    }
}
