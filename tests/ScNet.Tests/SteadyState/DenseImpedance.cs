using MathNet.Numerics.LinearAlgebra;
using ScNet.Numerics;
using ScNet.SteadyState;

namespace ScNet.Tests.SteadyState;

/// <summary>
/// The equations of the impedance, docs/theory/output-impedance.md, with drawn modes and dense matrices: column 0 of every
/// matrix is the particular flow, the others are the directions as given. A mode of charge q, rate λ and duty D adds
/// q²/D to what constant currents dissipate, and period · L(λ D T/2)/(2 λ) · (λ q − D J)² to what changes of them do.
/// </summary>
internal sealed class DenseImpedance
{
    private const double OwnInput = 0.4;

    private readonly double[] _duties;
    private readonly int _directions;
    private readonly List<(int Phase, double Rate, double Ramp, double[] Charges)> _modes = [];
    private readonly double[] _inputs;
    private readonly Matrix<double> _skew;

    /// <summary>Draws modes; the first of each phase carries a constant current.</summary>
    public DenseImpedance(int seed, double[] duties, int directions, int modes, bool isSkew, bool hasInputs, double ramp = 1)
    {
        Random random = new(seed);
        _duties = duties;
        _directions = directions;
        for (int j = 0; j < duties.Length; j++)
        {
            for (int m = 0; m < modes; m++)
            {
                _modes.Add((j, m == 0 ? 0 : Math.Pow(10, (2 * random.NextDouble()) - 1), m == 0 ? 0 : ramp * Draw(), [.. Enumerable.Range(0, 1 + directions).Select(_ => Draw())]));
            }
        }

        _inputs = [.. Enumerable.Range(0, directions).Select(_ => hasInputs ? Draw() : 0)];
        int moving = duties.Length * (modes - 1);
        _skew = Matrix<double>.Build.Dense(moving, moving, (r, c) => isSkew ? 0.3 * Draw() : 0);
        _skew -= _skew.Transpose();

        double Draw() => (2 * random.NextDouble()) - 1;
    }

    public ImpedanceTerms Terms()
    {
        PhaseTerms[] phases = [.. _duties.Select((_, j) =>
        {
            (int Phase, double Rate, double Ramp, double[] Charges)[] own = [.. _modes.Where(m => m.Phase == j)];
            DenseRows charges = new(own.Length, _directions + 2);
            for (int r = 0; r < own.Length; r++)
            {
                // what stands before the particular flow is none of the terms' business
                charges[r, 0] = 7;
                own[r].Charges.CopyTo(charges.Row(r)[1..]);
            }

            return new PhaseTerms(charges, 1, _directions, [.. own.Select(m => m.Rate)], [.. own.Select(m => m.Ramp)]);
        })];
        return ImpedanceTerms.Of(phases, OwnInput, _inputs, _duties, charges =>
        {
            Matrix<double> flows = Matrix<double>.Build.Dense(charges.RowCount, charges.ColumnCount, (r, c) => charges[r, c]);
            Matrix<double> all = flows * _skew * flows.Transpose();
            int n = charges.RowCount - 1;
            return ([.. Enumerable.Range(0, n * n).Select(k => all[1 + (k / n), 1 + (k % n)])], [.. Enumerable.Range(0, n).Select(k => all[1 + k, 0])]);
        });
    }

    public double Ohms(double period)
    {
        Vector<double> flow = Vector<double>.Build.DenseOfEnumerable([1, .. Amounts(period, reversed: false)]);
        return flow * Symmetric(period) * flow;
    }

    public double[] Amounts(double period, bool reversed)
    {
        Matrix<double> all = All(period, reversed);
        return _directions == 0 ? [] : [.. Square(all).Solve(-all.SubMatrix(1, _directions, 0, 1).Column(0))];
    }

    /// <summary>The amounts that one volt at the input drives, over a period.</summary>
    public double[] InputAmounts(double period, bool reversed) =>
        _directions == 0 ? [] : [.. period * Square(All(period, reversed)).Solve(Vector<double>.Build.Dense(_inputs))];

    /// <summary>Of a network with its phases in the opposite order the current ratio is the voltage ratio.</summary>
    public (double Voltage, double Current, double InputSiemens) Ratios(double period) => (
        OwnInput + Taken(Amounts(period, reversed: true)), OwnInput + Taken(Amounts(period, reversed: false)), Taken(InputAmounts(period, reversed: false)) / period);

    private double Taken(double[] amounts) => amounts.Zip(_inputs, (a, b) => a * b).Sum();

    private Matrix<double> Square(Matrix<double> all) => all.SubMatrix(1, _directions, 1, _directions);

    private Matrix<double> Symmetric(double period)
    {
        Matrix<double> sum = Matrix<double>.Build.Dense(1 + _directions, 1 + _directions);
        foreach ((int phase, double rate, double ramp, double[] charges) in _modes)
        {
            Vector<double> charge = Vector<double>.Build.Dense(charges);
            sum += charge.OuterProduct(charge) / _duties[phase];
            if (rate > 0)
            {
                double exponent = rate * _duties[phase] * period / 2;
                Vector<double> drive = rate * charge;
                drive[0] -= _duties[phase] * ramp;
                sum += period * ((1 / Math.Tanh(exponent)) - (1 / exponent)) / (2 * rate) * drive.OuterProduct(drive);
            }
        }

        return sum;
    }

    private Matrix<double> All(double period, bool reversed)
    {
        Matrix<double> charges = Matrix<double>.Build.DenseOfColumnArrays(_modes.Where(m => m.Rate > 0).Select(m => m.Charges));
        return Symmetric(period) + ((reversed ? -period : period) * (charges * _skew * charges.Transpose()));
    }
}
