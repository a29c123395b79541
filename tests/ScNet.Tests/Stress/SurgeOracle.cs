using MathNet.Numerics.LinearAlgebra;
using ScNet.Analysis;

namespace ScNet.Tests.Stress;

/// <summary>
/// Nodal analysis of the first instant of a phase: capacitors and sources as voltage sources behind a
/// millionth of an ohm, and a hundred megohms from each node to the reference, so that nothing is singular.
/// </summary>
internal static class SurgeOracle
{
    private const double SourceSiemens = 1e6;
    private const double LeakSiemens = 1e-8;

    public static double[] Potentials(NetworkSketch sketch, ModeAnalysis old, int[] phases, int phase, double[] ohms, IReadOnlyDictionary<int, double>? idleVolts = null)
    {
        int n = sketch.NodeCount;
        Matrix<double> conductances = Matrix<double>.Build.DenseDiagonal(n, LeakSiemens);
        Vector<double> currents = Vector<double>.Build.Dense(n);
        Source(NetworkSketch.Input, NetworkSketch.Reference, 1, SourceSiemens);
        if (sketch.Load == LoadKind.Stiff)
        {
            Source(NetworkSketch.Output, NetworkSketch.Reference, old.Ratio.ToDouble(), SourceSiemens);
        }

        for (int c = 0; c < sketch.Capacitors.Count; c++)
        {
            Quantity voltage = old.IdealPoint.CapacitorVoltages[c].IsDetermined || idleVolts is null ? old.IdealPoint.CapacitorVoltages[c]
                : Quantity.Numeric(idleVolts[c]);
            if (voltage.IsDetermined)
            {
                double esr = sketch.Capacitors[c].EsrOhms;
                Source(
                    sketch.Capacitors[c].Positive,
                    sketch.Capacitors[c].Bottom,
                    voltage.ToDouble(),
                    esr > 0 ? 1 / esr : SourceSiemens);
            }
        }

        for (int s = 0; s < phases.Length; s++)
        {
            if ((phases[s] >> phase & 1) == 1)
            {
                Source(sketch.Switches[s].First, sketch.Switches[s].Second, 0, 1 / ohms[s]);
            }
        }

        // the reference holds itself
        conductances[0, 0] += SourceSiemens;
        return conductances.Solve(currents).ToArray();

        void Source(int first, int second, double volts, double siemens)
        {
            conductances[first, first] += siemens;
            conductances[second, second] += siemens;
            conductances[first, second] -= siemens;
            conductances[second, first] -= siemens;
            currents[first] += siemens * volts;
            currents[second] -= siemens * volts;
        }
    }
}
