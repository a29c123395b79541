using ScNet.Analysis;

namespace ScNet.Benchmarks.Baselines;

/// <summary>Compares a dense analysis with the library's, number by number.</summary>
internal static class Agreement
{
    /// <exception cref="InvalidOperationException">A number differs by more than the tolerance.</exception>
    public static void Require(ModeAnalysis expected, DenseAnalysis actual, double tolerance)
    {
        int outputBranch = expected.ChargeFlow.Capacitors.Count;
        int branches = outputBranch + 2;
        Near("ratio", expected.Ratio.ToDouble(), actual.Ratio);
        Near("slow-switching limit", 1, actual.SlowOhmsAtOneHertz / expected.SlowSwitchingLimit.OhmsAtOneHertz);
        Near("fast-switching limit", 1, actual.FastOhms / expected.FastSwitchingLimit.Ohms);
        for (int phase = 0; phase < expected.ChargeFlow.Output.PhaseCount; phase++)
        {
            int start = phase * branches;
            Near("output charge", expected.ChargeFlow.Output[phase + 1].ToDouble(), actual.BranchCharges[start + outputBranch]);
            Near("input charge", expected.ChargeFlow.Input[phase + 1].ToDouble(), -actual.BranchCharges[start + outputBranch + 1]);
            for (int i = 0; i < outputBranch; i++)
            {
                Near("capacitor charge", expected.ChargeFlow.Capacitors[i][phase + 1].ToDouble(), actual.BranchCharges[start + i]);
            }

            int switches = expected.ChargeFlow.Switches.Count;
            for (int s = 0; s < switches; s++)
            {
                int index = (phase * switches) + s;
                Near("switch charge", expected.ChargeFlow.Switches[s][phase + 1].ToDouble(), actual.SwitchCharges[index]);
                Near("blocking voltage", expected.BlockingVoltages.Switches[s][phase + 1].ToDouble(), actual.BlockingVoltages[index]);
            }
        }

        void Near(string what, double exact, double number)
        {
            // written so that a number that is not one fails too
            if (!(Math.Abs(number - exact) <= tolerance))
            {
                throw new InvalidOperationException($"Expected {what} {exact:R} within {tolerance}, but got {number:R}.");
            }
        }
    }
}
