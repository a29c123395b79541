using ScNet.Numerics;

namespace ScNet.SteadyState;

/// <summary>
/// The derivatives of what two flows of one independent part have to do with one another, (q̂, q): charges and drives of
/// every mode, of the network and of the one with its phases in the opposite order ("reversed"), and the sums that make
/// derivatives of them. Of two flows per unit of load charge it is the impedance.
/// </summary>
/// <remarks>
/// Symbols as in docs/theory/output-impedance.md: charge q, drive w = λq - DBJ, weight ε. Which flows make which figure
/// of the two-port: docs/theory/parasitic-capacitances.md.
/// </remarks>
internal sealed class PartSensitivity
{
    private readonly Converter _converter;
    private readonly StateSpace _space;
    private readonly ResistorFlows _flows;
    private readonly PhaseModes[] _phases;
    private readonly double[] _duty;
    private readonly ModeFlow[] _forward;
    private readonly ModeFlow[] _reversed;
    private readonly ModePairs[] _pairs;
    private readonly double _period;
    private readonly double _load;
    private readonly double _reversedLoad;

    /// <summary>Prepares the derivatives.</summary>
    /// <param name="converter">The part with its component values.</param>
    /// <param name="prepared">The same, prepared.</param>
    /// <param name="period">The period in seconds.</param>
    /// <param name="reversedOfInput">Whether the reversed flow is that of one volt at the input, over the period; else of one unit into the load.</param>
    /// <param name="ofInput">Whether the flow is that of one volt at the input, over the period; else of one unit into the load.</param>
    public PartSensitivity(Converter converter, PreparedPart prepared, double period, bool reversedOfInput = false, bool ofInput = false)
    {
        _load = ofInput ? 0 : 1;
        _reversedLoad = reversedOfInput ? 0 : 1;
        _phases = prepared.Phases;
        _space = prepared.Space;
        _flows = prepared.Flows;
        _duty = prepared.Duties;
        _converter = converter;
        _period = period;
        _forward = Flow(prepared, _load, reversed: false);
        _reversed = Flow(prepared, _reversedLoad, reversed: true);
        _pairs = [.. _phases.Select((modes, j) => new ModePairs(modes, _forward[j].Drive, _reversed[j].Drive, Duration(j)))];
    }

    /// <summary>The derivative by a switch's on-resistance.</summary>
    public double ByOnResistance(int index)
    {
        double sum = 0;
        for (int j = 0; j < _phases.Length; j++)
        {
            if (_flows.Position(j, index) is var position and >= 0)
            {
                sum += CurrentProduct(j, ResistorCurrent(j, position), 0);
            }
        }

        return sum / _converter.Switches[index].Ohms;
    }

    /// <summary>The derivative by a capacitor's series resistance: the product of its currents.</summary>
    public double ByEsr(int index)
    {
        (int State, double Weight)[] voltage = _space.CapacitorRow(index);
        double farads = _converter.Capacitors[index].Farads, sum = 0;
        for (int j = 0; j < _phases.Length; j++)
        {
            double[] current = Couplings(j, voltage);
            for (int k = 0; k < current.Length; k++)
            {
                current[k] *= -farads;
            }

            sum += CurrentProduct(j, current, farads * StateSpace.Dot(voltage, _phases[j].Load));
        }

        return sum;
    }

    /// <summary>The derivative by a capacitance in ohms per farad.</summary>
    public double ByCapacitance(int index)
    {
        (int State, double Weight)[] voltage = _space.CapacitorRow(index);
        double sum = 0, before = 0;
        for (int j = 0; j < _phases.Length; j++)
        {
            double[] coupling = Couplings(j, voltage);
            double load = _duty[j] * StateSpace.Dot(voltage, _phases[j].Load);
            double fall = DenseRows.Dot(coupling, _forward[j].Charge) - (_load * load);
            double reversedFall = DenseRows.Dot(coupling, _reversed[j].Charge) - (_reversedLoad * load);
            double[] excess = _pairs[j].Excess;
            for (int k = _phases[j].FirstMode; k < coupling.Length; k++)
            {
                sum -= coupling[k] * excess[k] * ((reversedFall * _forward[j].Drive[k]) + (fall * _reversed[j].Drive[k]));
            }

            sum -= _pairs[j].ExcessProduct(coupling) + (reversedFall * (before + (0.5 * fall)));
            before += fall;
        }

        return _period * sum;
    }

    /// <summary>The derivative by the duty of a phase, all else and the period unchanged.</summary>
    public double ByDuty(int phase)
    {
        double sum = 0;
        for (int k = 0; k < _forward[phase].Charge.Length; k++)
        {
            sum -= _forward[phase].Charge[k] * _reversed[phase].Charge[k] / (_duty[phase] * _duty[phase]);
            sum += _period * _period * _forward[phase].Drive[k] * _reversed[phase].Drive[k]
                * ModalFunctions.ExcessByDuration(_phases[phase].Rates[k], Duration(phase));
        }

        return sum;
    }

    /// <summary>The derivative by the period in ohms per second, duties unchanged.</summary>
    public double ByPeriod()
    {
        double sum = 0;
        var before = new double[_space.StateCount];
        for (int j = 0; j < _phases.Length; j++)
        {
            for (int k = _phases[j].FirstMode; k < _phases[j].ModeCount; k++)
            {
                double rate = _phases[j].Rates[k];
                sum += _forward[j].Drive[k] * _reversed[j].Drive[k]
                    * (ModalFunctions.Excess(rate, Duration(j)) + (Duration(j) * ModalFunctions.ExcessByDuration(rate, Duration(j))));
            }

            double[] fall = _forward[j].Fall(), reversedFall = _reversed[j].Fall();
            sum += DenseRows.Dot(reversedFall, before) + (0.5 * DenseRows.Dot(reversedFall, fall));
            for (int x = 0; x < before.Length; x++)
            {
                before[x] += fall[x];
            }
        }

        return sum;
    }

    private double Duration(int phase) => _duty[phase] * _period;

    private ModeFlow[] Flow(PreparedPart prepared, double load, bool reversed)
    {
        double[] amounts = load == 0
            ? Array.ConvertAll(prepared.InputAmounts(_period, reversed), a => a / _period)
            : prepared.Amounts(_period, reversed);
        return [.. _phases.Select((modes, j) => ModeFlow.Of(modes, amounts, _duty[j], load))];
    }

    // How a voltage over the states falls with each mode's current.
    private double[] Couplings(int phase, (int State, double Weight)[] voltage)
    {
        PhaseModes modes = _phases[phase];
        var couplings = new double[modes.ModeCount];
        for (int k = modes.FirstMode; k < couplings.Length; k++)
        {
            couplings[k] = StateSpace.Dot(voltage, modes.Coupling(k));
        }

        return couplings;
    }

    private double[] ResistorCurrent(int phase, int position)
    {
        PhaseModes modes = _phases[phase];
        var current = new double[modes.ModeCount];
        for (int k = 0; k < current.Length; k++)
        {
            current[k] = modes.Rows[k, modes.ResistorColumn + position];
        }

        return current;
    }

    // T times the integral of a current and its counterpart in reversed time.
    private double CurrentProduct(int phase, double[] current, double constant)
    {
        double charge = (_load * constant * _duty[phase]) + DenseRows.Dot(current, _forward[phase].Charge);
        double reversedCharge = (_reversedLoad * constant * _duty[phase]) + DenseRows.Dot(current, _reversed[phase].Charge);
        return (charge * reversedCharge / _duty[phase]) + (_period * _pairs[phase].OverlapProduct(current));
    }
}
