using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>Samples that are determined at every time.</summary>
internal static class KnownVoltages
{
    public static double[] CapacitorVoltage(this PeriodicSteadyState steady, string capacitor, IReadOnlyList<double> timesSeconds) =>
        [.. steady.SampleCapacitorVoltage(capacitor, timesSeconds).Select(v => Assert.NotNull(v))];
}
