using ScNet.Analysis;
using ScNet.Design.Losses;

namespace ScNet.Design.Choice;

/// <summary>A sized stage at a duty: what a cycle loses, what is lost always, and how slow and how heavy a cycle may be.</summary>
internal sealed class StageCycle
{
    private readonly LossPolynomial[] _cycle = new LossPolynomial[LossModel.KindCount];
    private readonly LossPolynomial[] _always = new LossPolynomial[LossModel.KindCount];
    private readonly LossPolynomial _cycles;
    private readonly double _sharingOhmsAtOneHertz;
    private readonly double _hertzPerAmpereAndVolt;
    private readonly double _averageOverMost;
    private readonly double _riseOverMost;
    private readonly double _fastOhms;
    private readonly double _deadSeconds;
    private readonly (DiodeTerm Term, double Share)[] _diodes;
    private readonly (CoreTerm Term, double Share)[] _cores;

    /// <summary>Prepares a stage.</summary>
    public StageCycle(SizedConverter sized, ModeAnalysis analysis)
    {
        ModeAnalysis own = analysis.WithValuesOf(sized.Converter);
        LossTerms losses = LossTerms.Of(sized, own);
        _deadSeconds = sized.Process.DeadTimeSeconds;
        _diodes = [.. losses.Diodes.Select(d => (d, 1.0))];
        _cores = [.. losses.Cores.Select(c => (c, 1.0))];
        foreach (LossTerm term in losses.Terms)
        {
            LossPolynomial always = new() { Volts = term.Watts.Volts, Volts2 = term.Watts.Volts2, Constant = term.Watts.Constant };
            _always[(int)term.Kind] += always;
            _cycle[(int)term.Kind] += term.Watts + always.Times(-1);
        }

        _cycles = _cycle.Aggregate(default(LossPolynomial), (sum, c) => sum + c);
        _sharingOhmsAtOneHertz = own.ChargeSharing?.OhmsAtOneHertz ?? 0;
        _fastOhms = own.FastSwitchingLimit.Ohms;
        _hertzPerAmpereAndVolt = sized.Converter.Capacitors.Select((c, i) => SwingOf(own, c, i)).DefaultIfEmpty(0).Max();
        for (int l = 0; l < sized.Inductors.Count; l++)
        {
            if (sized.Inductors[l].MaximumAmperes is { } most)
            {
                (double average, double rise) = StageCurrents.Of(own, l, sized.Inductors[l]);
                _averageOverMost = Math.Max(_averageOverMost, average / most);
                _riseOverMost = Math.Max(_riseOverMost, rise / most);
            }
        }
    }

    // between two duties
    private StageCycle(StageCycle a, StageCycle b, double share)
    {
        for (int k = 0; k < _cycle.Length; k++)
        {
            _cycle[k] = a._cycle[k].Times(1 - share) + b._cycle[k].Times(share);
            _always[k] = a._always[k].Times(1 - share) + b._always[k].Times(share);
        }

        _cycles = a._cycles.Times(1 - share) + b._cycles.Times(share);
        _sharingOhmsAtOneHertz = Between(a._sharingOhmsAtOneHertz, b._sharingOhmsAtOneHertz);
        _hertzPerAmpereAndVolt = Between(a._hertzPerAmpereAndVolt, b._hertzPerAmpereAndVolt);
        _averageOverMost = Between(a._averageOverMost, b._averageOverMost);
        _riseOverMost = Between(a._riseOverMost, b._riseOverMost);
        _fastOhms = Between(a._fastOhms, b._fastOhms);
        _deadSeconds = a._deadSeconds;
        _diodes = [.. a._diodes.Select(d => (d.Term, d.Share * (1 - share))), .. b._diodes.Select(d => (d.Term, d.Share * share))];
        _cores = [.. a._cores.Select(c => (c.Term, c.Share * (1 - share))), .. b._cores.Select(c => (c.Term, c.Share * share))];

        double Between(double low, double high) => low + (share * (high - low));
    }

    /// <summary>The stage at a duty between this one and another.</summary>
    public StageCycle Towards(StageCycle other, double share) => share == 0 ? this : new StageCycle(this, other, share);

    /// <summary>The output impedance in ohms: an upper bound where some charge moves in impulses, exact where none does.</summary>
    public double OhmsAt(double hertz) => _fastOhms + (_sharingOhmsAtOneHertz / hertz);

    /// <summary>The lowest frequency in hertz at which cycles of a load current keep capacitors and inductors within what they may.</summary>
    public double LeastHertz(double volts, double amperes)
    {
        double swing = _hertzPerAmpereAndVolt * amperes / volts, room = 1 - (_averageOverMost * amperes);
        return _riseOverMost == 0 && room >= 0 ? swing
            : room > 0 ? Math.Max(swing, _riseOverMost * volts / room)
            : double.PositiveInfinity;
    }

    /// <summary>What cycles of a load current lose while they run, in watts.</summary>
    public double RunningWatts(double volts, double amperes, double hertz) =>
        _cycles.At(volts, amperes, hertz) + (_sharingOhmsAtOneHertz / hertz * amperes * amperes) + DiodeWatts(volts, amperes, hertz) + CoreWatts(volts, hertz);

    /// <summary>The losses by kind where a share of the cycles runs, each with the load current over the share.</summary>
    public void WattsAt(double volts, double cycleAmperes, double hertz, double share, Span<double> wattsByKind)
    {
        for (int k = 0; k < _cycle.Length; k++)
        {
            wattsByKind[k] = (share * _cycle[k].At(volts, cycleAmperes, hertz)) + _always[k].At(volts, 0, hertz);
        }

        wattsByKind[(int)LossKind.ChargeSharing] = share * _sharingOhmsAtOneHertz / hertz * cycleAmperes * cycleAmperes;
        wattsByKind[(int)LossKind.BodyDiodes] = share * DiodeWatts(volts, cycleAmperes, hertz);
        wattsByKind[(int)LossKind.Cores] = share * CoreWatts(volts, hertz);
    }

    private double CoreWatts(double volts, double hertz)
    {
        double watts = 0;
        foreach ((CoreTerm term, double share) in _cores)
        {
            watts += share * term.At(volts, hertz);
        }

        return watts;
    }

    private double DiodeWatts(double volts, double amperes, double hertz)
    {
        double watts = 0;
        foreach ((DiodeTerm term, double share) in _diodes)
        {
            watts += share * term.At(volts, amperes, hertz, _deadSeconds);
        }

        return watts;
    }

    // charge per ampere and period over the voltage by which the capacitor may swing, per volt of input
    private static double SwingOf(ModeAnalysis analysis, Capacitor capacitor, int index)
    {
        double charge = StageCurrents.ChargeOf(analysis, index);
        return charge > 0 && analysis.IdealPoint.CapacitorVoltages[index] is { IsDetermined: true } held && held.ToDouble() != 0
            ? charge / (StageProgram.CapacitorSwing * capacitor.Farads * Math.Abs(held.ToDouble()))
            : 0;
    }
}
