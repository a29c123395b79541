using ScNet.Numerics;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>Terms of the impedance of modes that are given one by one: of each its rate, then the charge of the particular flow and of each direction.</summary>
internal static class ModesByHand
{
    public static ImpedanceKernel Kernel(double[] duties, params (double Rate, double[] Charges)[][] phases) => ImpedanceKernel.Of(Terms(duties, phases), isTied: false);

    /// <summary>The particular flow takes half of the load's charge from the input; without skew parts the order of the phases does not matter.</summary>
    public static ImpedanceTerms Terms(
        double[] duties, (double Rate, double[] Charges)[][] phases, double[]? inputs = null, (double[] Square, double[] Particular)? skew = null)
    {
        int directions = phases.Max(p => p.Select(m => m.Charges.Length).DefaultIfEmpty().Max()) - 1;
        PhaseTerms[] terms = Array.ConvertAll(phases, modes =>
        {
            DenseRows charges = new(modes.Length, 1 + directions);
            for (int r = 0; r < modes.Length; r++)
            {
                modes[r].Charges.CopyTo(charges.Row(r));
            }

            return new PhaseTerms(charges, 0, directions, [.. modes.Select(m => m.Rate)], new double[modes.Length]);
        });
        return ImpedanceTerms.Of(terms, 0.5, inputs ?? new double[directions], duties, _ => skew ?? PhaseSkew.None(directions));
    }
}
