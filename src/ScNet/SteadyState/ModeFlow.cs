namespace ScNet.SteadyState;

/// <summary>
/// What flows in one phase: per coordinate of <see cref="PhaseModes"/> the charge q and the drive
/// w = λq - DBJ that shapes its current, and how far the states fall in consequence.
/// </summary>
/// <remarks>Symbols: docs/theory/output-impedance.md. Charges are in the unit of the amounts.</remarks>
internal sealed class ModeFlow
{
    private readonly PhaseModes _modes;
    private readonly double _loadCharge;

    private ModeFlow(PhaseModes modes, double[] charge, double loadCharge)
    {
        _modes = modes;
        _loadCharge = loadCharge;
        Charge = charge;
        Drive = new double[charge.Length];
        for (int row = modes.FirstMode; row < charge.Length; row++)
        {
            Drive[row] = (modes.Rates[row] * charge[row]) - (loadCharge * modes.Ramps[row]);
        }
    }

    /// <summary>The charge of each coordinate.</summary>
    public double[] Charge { get; }

    /// <summary>The drive of each coordinate; zero for what node groups fix.</summary>
    public double[] Drive { get; }

    /// <summary>The flow of one phase.</summary>
    /// <param name="modes">The phase.</param>
    /// <param name="amounts">The amount of each direction, in the unit wanted.</param>
    /// <param name="duty">The duty of the phase.</param>
    /// <param name="loadCharge">The charge into the load in one period, in the unit wanted.</param>
    public static ModeFlow Of(PhaseModes modes, ReadOnlySpan<double> amounts, double duty, double loadCharge)
    {
        var charge = new double[modes.ModeCount];
        for (int row = 0; row < charge.Length; row++)
        {
            double own = loadCharge * modes.Particular(row);
            for (int k = 0; k < amounts.Length; k++)
            {
                own += amounts[k] * modes.Direction(row, k);
            }

            charge[row] = own;
        }

        return new ModeFlow(modes, charge, loadCharge * duty);
    }

    /// <summary>By how much each state falls in the phase: Bᵀq - DJ.</summary>
    public double[] Fall()
    {
        var fall = new double[_modes.States];
        for (int x = 0; x < fall.Length; x++)
        {
            fall[x] = -_loadCharge * _modes.Load[x];
        }

        for (int row = _modes.FirstMode; row < _modes.ModeCount; row++)
        {
            ReadOnlySpan<double> coupling = _modes.Coupling(row);
            for (int x = 0; x < fall.Length; x++)
            {
                fall[x] += Charge[row] * coupling[x];
            }
        }

        return fall;
    }
}
