using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;
using ScNet.Kernel;
using ScNet.Numerics;

namespace ScNet.Analysis;

/// <summary>
/// How much charge takes each of the directions that topology leaves free, in either limit, in the
/// order of <see cref="TopologySolution.Directions"/>.
/// </summary>
/// <remarks>Equations: docs/theory/value-decided-flow.md. Charges are indexed element · phases + phase.</remarks>
internal static class DirectionAmounts
{
    /// <summary>
    /// Least dissipation: minimise Σ R a² / D over switches and series resistances. Combinations that no
    /// resistance sees are loops of capacitors and sources without a switch, which obey Kirchhoff's
    /// voltage law at every instant and so at the phase ends.
    /// </summary>
    public static double[] Fast(Converter converter, TopologySolution exact)
    {
        SwitchedNetwork network = converter.Network;
        int phases = network.PhaseCount;
        int switchEntries = network.SwitchCount * phases;
        int rows = switchEntries + (network.CapacitorCount * phases);
        var weight = new double[rows];
        for (int e = 0; e < rows; e++)
        {
            int element = (e < switchEntries ? e : e - switchEntries) / phases;
            double ohms = e < switchEntries ? converter.Switches[element].Ohms : converter.Capacitors[element].EsrOhms;
            weight[e] = Math.Sqrt(ohms / network.Duties[e % phases].ToDouble());
        }

        double Entry(double[] switches, double[] branches, int e) =>
            weight[e] * (e < switchEntries ? switches[e] : branches[e - switchEntries]);
        double[] ownSwitches = [.. exact.Switches.Select(q => q.ToDouble())];
        double[] ownBranches = [.. exact.Branches.Select(q => q.ToDouble())];
        Vector<double> particular = Vector<double>.Build.Dense(rows, e => Entry(ownSwitches, ownBranches, e));
        DirectionBasis basis = DirectionBasis.Of(DenseMatrix.Create(
            rows, exact.Directions.Count, (e, k) => Entry(exact.Directions[k].Switches, exact.Directions[k].Branches, e)));
        double[] amounts = basis.Amounts(orthonormal => -orthonormal.TransposeThisAndMultiply(particular));
        if (basis.Unmoved is { } unseen)
        {
            Matrix<double> directions = CapacitorCharges(converter, exact.Directions);
            Vector<double> charges = CapacitorCharges(converter, exact) + (directions * Vector<double>.Build.Dense(amounts));
            Vector<double> added = unseen * Vector<double>.Build.Dense(MeetVoltages(directions * unseen, charges, phases));
            amounts = [.. amounts.Zip(added, (a, b) => a + b)];
        }

        return amounts;
    }

    /// <summary>
    /// Kirchhoff's voltage law at the phase ends, tested with every direction z: Σ z · v = 0, where v is
    /// the running sum of charge over capacitance. With weights 1/√C the symmetric part is half the
    /// identity. Directions that move no capacitor, or none in this limit, get zero.
    /// </summary>
    public static double[] Slow(Converter converter, TopologySolution exact)
    {
        SwitchedNetwork network = converter.Network;
        int phases = network.PhaseCount;
        var all = new double[exact.Directions.Count];
        int[] moving = [.. Enumerable.Range(0, all.Length).Where(k => IsMoving(network, exact.Directions[k]))];
        if (moving.Length == 0)
        {
            return all;
        }

        double[] amounts = MeetVoltages(
            CapacitorCharges(converter, [.. moving.Select(k => exact.Directions[k])]), CapacitorCharges(converter, exact), phases);
        for (int k = 0; k < moving.Length; k++)
        {
            all[moving[k]] = amounts[k];
        }

        return all;
    }

    /// <summary>Whether capacitors take part in a direction in the slow-switching limit.</summary>
    public static bool IsMoving(SwitchedNetwork network, FlowDirection direction) =>
        !direction.IsStillWhenSlow && direction.MovesCapacitors(network.CapacitorCount, network.PhaseCount);

    // The amounts with which charges · √(1/C) meet Kirchhoff's voltage law at the phase ends, tested with every direction.
    private static double[] MeetVoltages(Matrix<double> directions, Vector<double> charges, int phases) =>
        DirectionBasis.Of(directions).Amounts(orthonormal =>
        {
            Matrix<double> system = orthonormal.TransposeThisAndMultiply(RunningSums(orthonormal, phases));
            Vector<double> demand = orthonormal.TransposeThisAndMultiply(RunningSums(charges.ToColumnMatrix(), phases).Column(0));
            return system.LU().Solve(-demand);
        });

    // Charge over the root of capacitance; index capacitor · phases + phase.
    private static Vector<double> CapacitorCharges(Converter converter, TopologySolution exact) =>
        Vector<double>.Build.Dense(CapacitorEntries(converter), e => Weight(converter, e) * exact.Branches[e].ToDouble());

    private static DenseMatrix CapacitorCharges(Converter converter, IReadOnlyList<FlowDirection> directions) =>
        DenseMatrix.Create(CapacitorEntries(converter), directions.Count, (e, k) => Weight(converter, e) * directions[k].Branches[e]);

    private static int CapacitorEntries(Converter converter) => converter.Capacitors.Count * converter.Phases.Count;

    private static double Weight(Converter converter, int entry) =>
        1 / Math.Sqrt(converter.Capacitors[entry / converter.Phases.Count].Farads);

    private static Matrix<double> RunningSums(Matrix<double> charges, int phases)
    {
        Matrix<double> sums = charges.Clone();
        for (int e = 0; e < sums.RowCount; e++)
        {
            if (e % phases > 0)
            {
                sums.SetRow(e, sums.Row(e) + sums.Row(e - 1));
            }
        }

        return sums;
    }
}
