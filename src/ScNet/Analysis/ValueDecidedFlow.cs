using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;
using MathNet.Numerics.LinearAlgebra.Factorization;
using ScNet.Graphs;

namespace ScNet.Analysis;

/// <summary>
/// Settles by component values what topology leaves free, and forms flow and limits. Where topology
/// leaves nothing free it only multiplies exact coefficients by the values.
/// </summary>
/// <remarks>
/// The free directions are few and exact; the slow limit solves Kirchhoff's voltage law at the phase ends
/// in their space, the fast limit minimises dissipation there. Equations: docs/theory/value-decided-flow.md.
/// Cost: a singular value decomposition with one column per free direction.
/// </remarks>
internal sealed class ValueDecidedFlow
{
    // Directions whose share falls below this fraction of the largest are combinations that move nothing.
    private const double RankTolerance = 1e-13;

    // The amount of a direction that takes no part, so that it leaves exact entries exact.
    private const double Idle = double.NaN;

    private readonly Converter _converter;
    private readonly SwitchedNetwork _network;
    private readonly ExactMode _exact;
    private readonly int _phases;

    private ValueDecidedFlow(Converter converter, ExactMode exact)
    {
        _converter = converter;
        _network = converter.Network;
        _exact = exact;
        _phases = _network.PhaseCount;
    }

    public static LoadedResults Settle(Converter converter, ExactMode exact) => new ValueDecidedFlow(converter, exact).Settle();

    private LoadedResults Settle()
    {
        FlowDirection[] moving = [.. _exact.Directions.Where(d => d.MovesCapacitors(_network.CapacitorCount, _phases))];
        Quantity[] slowBranches = _exact.Branches;
        Quantity[] fastBranches = _exact.Branches;
        Quantity[] switches = _exact.Switches;
        Quantity[] ports = _exact.Branches;
        if (_exact.Directions.Count > 0)
        {
            double[] fast = FastAmounts();
            fastBranches = Combine(_exact.Branches, d => d.Branches, fast);
            switches = Combine(_exact.Switches, d => d.Switches, fast);
            (double[] slow, bool areUnique) = SlowAmounts(moving, fast);
            slowBranches = Combine(_exact.Branches, d => d.Branches, slow);
            ports = areUnique ? slowBranches : fastBranches;
        }

        ChargeFlow flow = new(
            moving.Length == 0 ? FlowDetermination.Topology : FlowDetermination.ComponentValues,
            Negated(ports, _network.InputBranch),
            new PhaseValues(ports, _network.OutputBranch * _phases, _phases),
            new PhaseTable(slowBranches, _network.CapacitorCount, _phases),
            new PhaseTable(switches, _network.SwitchCount, _phases));
        return new LoadedResults(flow, Slow(slowBranches), Fast(switches, fastBranches));
    }

    private SlowSwitchingLimit Slow(Quantity[] charges)
    {
        Quantity[] coefficients = Coefficients(_exact.SlowCoefficients, charges, _ => 0.5);
        double ohms = 0;
        for (int i = 0; i < coefficients.Length; i++)
        {
            ohms += coefficients[i].ToDouble() / _converter.Capacitors[i].CapacitanceFarads;
        }

        return new SlowSwitchingLimit(coefficients, ohms);
    }

    private FastSwitchingLimit Fast(Quantity[] switches, Quantity[] branches)
    {
        double InverseDuty(int phase) => 1 / _network.Duties[phase].ToDouble();
        Quantity[] switchCoefficients = Coefficients(_exact.FastSwitchCoefficients, switches, InverseDuty);
        Quantity[] capacitorCoefficients = Coefficients(_exact.FastCapacitorCoefficients, branches, InverseDuty);
        double ohms = 0;
        for (int s = 0; s < switchCoefficients.Length; s++)
        {
            ohms += switchCoefficients[s].ToDouble() * _converter.Switches[s].OnResistanceOhms;
        }

        for (int i = 0; i < capacitorCoefficients.Length; i++)
        {
            ohms += capacitorCoefficients[i].ToDouble() * _converter.Capacitors[i].EsrOhms;
        }

        return new FastSwitchingLimit(switchCoefficients, capacitorCoefficients, ohms);
    }

    // The exact coefficient stands where all charges of the element are exact.
    private Quantity[] Coefficients(Quantity[] exact, Quantity[] charges, Func<int, double> weight)
    {
        if (_exact.Directions.Count == 0)
        {
            return exact;
        }

        var coefficients = new Quantity[exact.Length];
        for (int i = 0; i < coefficients.Length; i++)
        {
            ReadOnlySpan<Quantity> own = charges.AsSpan(i * _phases, _phases);
            bool isExact = true;
            double sum = 0;
            for (int j = 0; j < _phases; j++)
            {
                double charge = own[j].ToDouble();
                sum += charge * charge * weight(j);
                isExact &= own[j].IsExact;
            }

            coefficients[i] = isExact ? exact[i] : Quantity.Numeric(sum);
        }

        return coefficients;
    }

    private PhaseValues Negated(Quantity[] branches, int branch)
    {
        var values = new Quantity[_phases];
        for (int j = 0; j < _phases; j++)
        {
            values[j] = -branches[(branch * _phases) + j];
        }

        return new PhaseValues(values, 0, _phases);
    }

    // An entry stays exact where no direction touches it.
    private Quantity[] Combine(Quantity[] particular, Func<FlowDirection, double[]> entries, double[] amounts)
    {
        IReadOnlyList<FlowDirection> directions = _exact.Directions;
        var combined = (Quantity[])particular.Clone();
        var added = new double[particular.Length];
        var isTouched = new bool[particular.Length];
        for (int k = 0; k < directions.Count; k++)
        {
            if (double.IsNaN(amounts[k]))
            {
                continue;
            }

            double[] direction = entries(directions[k]);
            for (int e = 0; e < direction.Length; e++)
            {
                added[e] += amounts[k] * direction[e];
                isTouched[e] |= direction[e] != 0;
            }
        }

        for (int e = 0; e < combined.Length; e++)
        {
            if (isTouched[e])
            {
                combined[e] = Quantity.Numeric(particular[e].ToDouble() + added[e]);
            }
        }

        return combined;
    }

    // Least dissipation: minimise Σ R a² / D over switches and series resistances.
    private double[] FastAmounts()
    {
        int switchEntries = _network.SwitchCount * _phases;
        int rows = switchEntries + (_network.CapacitorCount * _phases);
        var weight = new double[rows];
        for (int e = 0; e < rows; e++)
        {
            int element = (e < switchEntries ? e : e - switchEntries) / _phases;
            double ohms = e < switchEntries ? _converter.Switches[element].OnResistanceOhms : _converter.Capacitors[element].EsrOhms;
            weight[e] = Math.Sqrt(ohms / _network.Duties[e % _phases].ToDouble());
        }

        double Entry(double[] switches, double[] branches, int e) =>
            weight[e] * (e < switchEntries ? switches[e] : branches[e - switchEntries]);
        double[] ownSwitches = [.. _exact.Switches.Select(q => q.ToDouble())];
        double[] ownBranches = [.. _exact.Branches.Select(q => q.ToDouble())];
        Vector<double> particular = Vector<double>.Build.Dense(rows, e => Entry(ownSwitches, ownBranches, e));
        Basis basis = Basis.Of(DenseMatrix.Create(
            rows, _exact.Directions.Count, (e, k) => Entry(_exact.Directions[k].Switches, _exact.Directions[k].Branches, e)));
        return basis.Amounts(orthonormal => -orthonormal.TransposeThisAndMultiply(particular));
    }

    // Kirchhoff's voltage law at the phase ends, tested with every direction z: Σ z · v = 0, where v is the
    // running sum of charge over capacitance. With weights 1/√C the symmetric part is half the identity.
    // Directions that move no capacitor keep the amounts of the fast limit.
    private (double[] Amounts, bool AreUnique) SlowAmounts(FlowDirection[] moving, double[] fastAmounts)
    {
        if (moving.Length == 0)
        {
            return (Slowed(fastAmounts), true);
        }

        int rows = _network.CapacitorCount * _phases;
        double Weight(int e) => 1 / Math.Sqrt(_converter.Capacitors[e / _phases].CapacitanceFarads);
        Vector<double> particular = Vector<double>.Build.Dense(rows, e => Weight(e) * _exact.Branches[e].ToDouble());
        Basis basis = Basis.Of(DenseMatrix.Create(rows, moving.Length, (e, k) => Weight(e) * moving[k].Branches[e]));
        double[] amounts = basis.Amounts(orthonormal =>
        {
            Matrix<double> system = orthonormal.TransposeThisAndMultiply(RunningSums(orthonormal));
            Vector<double> demand = orthonormal.TransposeThisAndMultiply(RunningSums(particular.ToColumnMatrix()).Column(0));
            return system.LU().Solve(-demand);
        });

        double[] all = Slowed(fastAmounts);
        for (int k = 0, m = 0; k < all.Length && m < moving.Length; k++)
        {
            if (ReferenceEquals(_exact.Directions[k], moving[m]))
            {
                all[k] = amounts[m++];
            }
        }

        return (all, basis.Rank == moving.Length);
    }

    // Directions that move no capacitor keep their amounts, idle ones have none.
    private double[] Slowed(double[] fastAmounts) =>
        [.. fastAmounts.Select((amount, k) => _exact.Directions[k].IsIdleWhenSlow ? Idle : amount)];

    private Matrix<double> RunningSums(Matrix<double> charges)
    {
        Matrix<double> sums = charges.Clone();
        for (int e = 0; e < sums.RowCount; e++)
        {
            if (e % _phases > 0)
            {
                sums.SetRow(e, sums.Row(e) + sums.Row(e - 1));
            }
        }

        return sums;
    }

    /// <summary>An orthonormal basis of the space that weighted directions span.</summary>
    private sealed class Basis
    {
        private readonly Matrix<double> _orthonormal;
        private readonly Matrix<double> _toDirections;

        private Basis(Matrix<double> orthonormal, Matrix<double> toDirections)
        {
            _orthonormal = orthonormal;
            _toDirections = toDirections;
        }

        public int Rank => _orthonormal.ColumnCount;

        public static Basis Of(Matrix<double> directions)
        {
            // equal column lengths, so that the rank does not depend on units
            Vector<double> length = directions.ColumnNorms(2).Map(n => n > 0 ? n : 1);
            Matrix<double> scaled = directions * Matrix<double>.Build.DiagonalOfDiagonalVector(1 / length);
            Svd<double> svd = scaled.Svd(computeVectors: true);
            int rank = svd.S.Count(s => s > RankTolerance * svd.S[0]);
            Matrix<double> right = svd.VT.SubMatrix(0, rank, 0, directions.ColumnCount).Transpose();
            for (int k = 0; k < rank; k++)
            {
                right.SetColumn(k, right.Column(k).PointwiseDivide(length) / svd.S[k]);
            }

            return new Basis(svd.U.SubMatrix(0, directions.RowCount, 0, rank), right);
        }

        /// <summary>The amount of each direction that a solution in the basis amounts to.</summary>
        public double[] Amounts(Func<Matrix<double>, Vector<double>> solve) =>
            Rank == 0 ? new double[_toDirections.RowCount] : (_toDirections * solve(_orthonormal)).ToArray();
    }
}
