using ScNet.SteadyState;
using ScNet.SteadyState.Exponential;

namespace ScNet.Tests.SteadyState.Exponential;

/// <summary>Networks of resistors and capacitors have one two-port, by exponentials and by symmetric decomposition.</summary>
[Trait("Kind", "Law")]
public sealed class ModalAgreementLaws
{
    [Fact]
    public void Both_methods_agree_on_any_network_of_resistors_and_capacitors() => LawSample.Check(
        (_, analysis) =>
        {
            TwoPort modal = SteadyStateModel.Of(analysis).TwoPort;
            PeriodSolver solver = ExponentialTwoPort.Of(analysis.Converter, analysis.Mode).Solver;
            double corner = SteadyStateModel.Of(analysis).Impedance.CornerFrequencyHz;
            if (!(corner > 1e-9 && corner < 1e9))
            {
                return;
            }

            foreach (double f in (double[])[0.01 * corner, corner, 30 * corner])
            {
                Assert.Equal(NetworkFault.None, solver.Solve(f, out PeriodFigures found));
                TwoPortPoint expected = modal.At(f);
                Assert.Equal(expected.Ohms, found.Ohms, 1e-9 * expected.Ohms);
                Assert.Equal(expected.Ratio, found.Ratios.Voltage, 1e-9 * Math.Abs(expected.Ratio));
                Assert.Equal(expected.CurrentRatio, found.Ratios.Current, 1e-9 * Math.Abs(expected.Ratio));
                Assert.Equal(0, found.Ratios.InputSiemens, 1e-9 * expected.Ratio * expected.Ratio / expected.Ohms);
                Assert.InRange(expected.DecayPerPeriod, 0, 1);
                foreach ((double? voltage, int i) in expected.CapacitorVoltages.Select((v, i) => (v, i)))
                {
                    Assert.Equal(analysis.IdealPoint.CapacitorVoltages[i].IsDetermined, voltage is not null);
                }
            }
        },
        iterations: 300);
}
