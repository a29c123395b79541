namespace ScNet.SteadyState;

/// <summary>Averages of a converter with several outputs at given loads.</summary>
public sealed class MultiPortOperation
{
    internal MultiPortOperation(MultiPortPoint point, double inputVolts, double[] loadAmperes)
    {
        int count = loadAmperes.Length;
        var volts = new double?[count];
        InputVolts = inputVolts;
        InputAmperes = point.InputSiemens * inputVolts;
        for (int i = 0; i < count; i++)
        {
            double? own = point.Ratios[i] * inputVolts;
            for (int k = 0; k < count; k++)
            {
                own -= loadAmperes[k] == 0 ? 0 : point.Ohms[i, k] * loadAmperes[k];
            }

            volts[i] = own;
            OutputWatts += (own ?? 0) * loadAmperes[i];
            InputAmperes += loadAmperes[i] == 0 ? 0 : point.CurrentRatios[i]!.Value * loadAmperes[i];
        }

        OutputVolts = new(volts, point.Ratios.Names);
        LoadAmperes = new([.. loadAmperes], point.Ratios.Names);
    }

    /// <summary>Input voltage in volts (V).</summary>
    public double InputVolts { get; }

    /// <summary>Average load current of each output in amperes (A), the main one first.</summary>
    public NamedList<double> LoadAmperes { get; }

    /// <summary>Average voltage of each output in volts (V); null for one without path or supply.</summary>
    public NamedList<double?> OutputVolts { get; }

    /// <summary>Average input current in amperes (A).</summary>
    public double InputAmperes { get; }

    /// <summary>Power from the source in watts (W).</summary>
    public double InputWatts => InputVolts * InputAmperes;

    /// <summary>Power into all loads in watts (W).</summary>
    public double OutputWatts { get; }

    /// <summary>What the elements dissipate in watts (W): the difference of both.</summary>
    public double DissipationWatts => InputWatts - OutputWatts;

    /// <summary>Power into all loads per power from the source; null where one of them is not positive.</summary>
    public double? Efficiency => InputWatts > 0 && OutputWatts > 0 ? OutputWatts / InputWatts : null;

    /// <summary>The voltages and the power.</summary>
    public override string ToString() =>
        $"{string.Join(", ", OutputVolts.Select((v, k) => $"{OutputVolts.Names[k]} {(v is { } volts ? UnitText.Of(volts, "V") : "?")}"))}; {UnitText.Of(InputWatts, "W")} in, {UnitText.Of(OutputWatts, "W")} out";
}
