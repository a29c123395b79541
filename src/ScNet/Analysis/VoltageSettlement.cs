using System.Numerics;
using Fractions;
using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>One settlement of <see cref="OpenVoltages{T}"/> with the inductances of one converter.</summary>
internal sealed class VoltageSettlement<T>
    where T : struct, IBinaryInteger<T>
{
    private readonly Converter _converter;
    private readonly PhaseForest[] _forests;
    private readonly bool[] _unconnected;
    private readonly IReadOnlyList<(int Capacitor, Fraction Voltage)> _controlled;
    private readonly T[] _inverseHenries;
    private readonly T[] _weights;
    private readonly bool _hasMeshes;
    private readonly InductorVoltages<T>? _inductors;

    public VoltageSettlement(
        Converter converter, PhaseForest[] forests, LoopSet loops, bool[] unconnected, IReadOnlyList<(int Capacitor, Fraction Voltage)> controlled)
    {
        (_converter, _forests, _unconnected, _controlled) = (converter, forests, unconnected, controlled);
        _hasMeshes = loops.HasMeshes;
        if (converter.Inductors.Count == 0)
        {
            (_inverseHenries, _weights, _inductors) = ([], [], null);
            return;
        }

        _inverseHenries = InProportion([.. converter.Inductors.Select(l => ExactDecimal.Of(l.Henries)).Select(h => new Fraction(h.Denominator, h.Numerator))]);
        _weights = Array.ConvertAll(converter.Network.PhaseWeights, T.CreateChecked);
        _inductors = new InductorVoltages<T>(converter.Network, forests, loops, _inverseHenries);
    }

    /// <summary>The equations that hold capacitors where their controllers do.</summary>
    public static Rational<T>[][] Control(VoltageSpace<T> space, IEnumerable<(int Capacitor, Fraction Voltage)> controlled) =>
    [
        .. controlled.Select(c =>
            (Rational<T>[])[.. space.Movements.Select(m => m[c.Capacitor]), space.Origin[c.Capacitor] - Rational<T>.Of(c.Voltage)]),
    ];

    /// <summary>Settles, least by control: what ripple fixes at the same value needs no controller.</summary>
    public SettledVoltages Of(VoltageSpace<T> averages)
    {
        VoltageSpace<T> natural = WithRipple(averages);
        if (_controlled.All(c => !natural.Moves(c.Capacitor) && natural.Origin[c.Capacitor].Equals(Rational<T>.Of(c.Voltage))))
        {
            int[] open = LeftToLosses(natural);
            bool isOpen = natural.Movements.Exists(HasVoltSeconds);
            VoltageBalance balance = isOpen ? VoltageBalance.Losses
                : natural.Movements.Count < averages.Movements.Count ? VoltageBalance.Ripple : VoltageBalance.Averages;
            return Collect(natural, balance, open, isOpen ? [OpenWarning(natural, open)] : []);
        }

        // that control agrees with the averages was checked before
        VoltageSpace<T> settled = WithRipple(averages.Where(Control(averages, _controlled)) ?? averages);
        int[] left = LeftToLosses(settled);
        bool isLeft = settled.Movements.Exists(HasVoltSeconds);
        return Collect(
            settled,
            isLeft ? VoltageBalance.Losses : VoltageBalance.Control,
            left,
            [.. _controlled.Where(c => !natural.Moves(c.Capacitor)).Select(c => AgainstBalance(c, natural)).OfType<Diagnostic>(), .. isLeft ? [OpenWarning(settled, left)] : (Diagnostic[])[]]);
    }

    // Where the equations contradict each other the straight lines drive some movement on and on, and losses stop it.
    private VoltageSpace<T> WithRipple(VoltageSpace<T> space) =>
        _inverseHenries.Length > 0 && space.Movements.Count > 0 && space.Movements.Append(space.Origin).All(IsBalanced)
            ? space.Where(StraightLineRipple.Equations(space, _inductors!, _inverseHenries, _weights)) ?? space
            : space;

    private bool HasVoltSeconds(Rational<T>[] movement) => _inverseHenries.Length > 0 && Array.Exists(_inductors!.Of(movement), v => !v.IsZero);

    // Not where inductors are in series for a part of the period only: there their currents would have to jump.
    private bool IsBalanced(Rational<T>[] branches)
    {
        if (!_hasMeshes)
        {
            return true;
        }

        Rational<T>[] voltages = _inductors!.Of(branches);
        return Enumerable.Range(0, _inverseHenries.Length).All(l => VoltSeconds(voltages, l).IsZero);
    }

    private Rational<T> VoltSeconds(Rational<T>[] voltages, int inductor)
    {
        Rational<T> sum = Rational<T>.Zero;
        for (int j = 0; j < _weights.Length; j++)
        {
            sum += voltages[(inductor * _weights.Length) + j] * _weights[j];
        }

        return sum;
    }

    private SettledVoltages Collect(VoltageSpace<T> space, VoltageBalance balance, int[] left, Diagnostic[] warnings) => SettledVoltages.Of(
        _converter, _forests, space, _unconnected, new PhaseTable(InductorTable(space), _converter.Inductors.Names, _converter.Phases.Names), balance, warnings) with
    { LeftToLosses = left };

    private Quantity[] InductorTable(VoltageSpace<T> space)
    {
        if (_inverseHenries.Length == 0)
        {
            return [];
        }

        Rational<T>[] voltages = _inductors!.Of(space.Origin);
        Quantity[] table = [.. voltages.Select((v, e) => VoltSeconds(voltages, e / _weights.Length).IsZero ? v.ToQuantity() : Quantity.Undetermined)];
        foreach (Rational<T>[] movement in space.Movements)
        {
            Rational<T>[] moved = _inductors!.Of(movement);
            for (int e = 0; e < table.Length; e++)
            {
                table[e] = moved[e].IsZero ? table[e] : Quantity.Undetermined;
            }
        }

        return table;
    }

    private int[] LeftToLosses(VoltageSpace<T> space)
    {
        List<Rational<T>[]> held = space.Movements.FindAll(HasVoltSeconds);
        return [.. Enumerable.Range(0, _converter.Capacitors.Count).Where(i => ModeFindings.Moves(held, i))];
    }

    private Diagnostic OpenWarning(VoltageSpace<T> space, int[] open)
    {
        string[] names = [.. open.Select(i => _converter.Capacitors[i].Name)];
        string what = names.Length == 0 ? "the output"
            : LoopDescriptions.List(names) + (space.Moves(_converter.Network.OutputBranch) ? ", and with it the output's" : string.Empty);
        return new Diagnostic(
            DiagnosticSeverity.Warning,
            DiagnosticCodes.BalancedByLosses,
            $"Neither averages nor the ripple of inductor currents fix the voltage of {what}: resistances decide. Ask for the periodic solution at a frequency, or state what a controller holds it at (controlled).",
            names);
    }

    private Diagnostic? AgainstBalance((int Capacitor, Fraction Voltage) controlled, VoltageSpace<T> natural)
    {
        string name = _converter.Capacitors[controlled.Capacitor].Name;
        Quantity own = natural.Origin[controlled.Capacitor].ToQuantity();
        return own == Quantity.Exact(controlled.Voltage) ? null : new Diagnostic(
            DiagnosticSeverity.Warning,
            DiagnosticCodes.ControlledAgainstBalance,
            $"Capacitor {Quoted.Name(name)} is controlled at {Quantity.Exact(controlled.Voltage)} of the input, but by itself, with the duties as they are, it goes to {own}: the controller has to shift duties for ever.",
            [name]);
    }

    private static T[] InProportion(Fraction[] values)
    {
        BigInteger common = BigInteger.One, content = BigInteger.Zero;
        foreach (Fraction value in values)
        {
            common *= value.Denominator / BigInteger.GreatestCommonDivisor(common, value.Denominator);
        }

        BigInteger[] whole = Array.ConvertAll(values, v => v.Numerator * (common / v.Denominator));
        foreach (BigInteger value in whole)
        {
            content = BigInteger.GreatestCommonDivisor(content, value);
        }

        return Array.ConvertAll(whole, v => T.CreateChecked(v / content));
    }
}
