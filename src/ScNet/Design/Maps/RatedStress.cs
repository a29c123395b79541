using ScNet.Design.Losses;

namespace ScNet.Design.Maps;

/// <summary>The largest voltage of an element against what its device withstands.</summary>
/// <param name="Element">The name of the element.</param>
/// <param name="Volts">The magnitude of the largest voltage in volts (V), by the ideal voltages of the mode.</param>
/// <param name="RatedVolts">What its stack of devices withstands in volts (V).</param>
public readonly record struct RatedStress(string Element, double Volts, double RatedVolts)
{
    /// <summary>Voltage over rating: above 1 it is overloaded.</summary>
    public double Share => Volts / RatedVolts;

    /// <summary>The element and both voltages.</summary>
    public override string ToString() => $"{Element}: {UnitText.Of(Volts, "V")} of {UnitText.Of(RatedVolts, "V")}";

    /// <summary>That of the most loaded element, per volt of input; null without devices or determined voltages. Those that nothing fixes are left out.</summary>
    internal static RatedStress? PerVoltOf(LossModel? model)
    {
        if (model is null)
        {
            return null;
        }

        Converter converter = model.Analysis.Converter;
        RatedStress? worst = null;
        for (int i = 0; i < converter.Switches.Count; i++)
        {
            Take(converter.Switches[i].Name, model.Analysis.Switches[i].PeakBlocking, model.Sized.Switches[i].RatedVolts);
        }

        for (int i = 0; i < converter.Capacitors.Count; i++)
        {
            Take(converter.Capacitors[i].Name, model.Analysis.IdealPoint.CapacitorVoltages[i], model.Sized.Capacitors[i].RatedVolts);
        }

        return worst;

        void Take(string name, Quantity voltage, double ratedVolts)
        {
            if (voltage.IsDetermined && new RatedStress(name, Math.Abs(voltage.ToDouble()), ratedVolts) is var own && !(own.Share <= worst?.Share))
            {
                worst = own;
            }
        }
    }

    internal RatedStress At(double inputVolts) => this with { Volts = Volts * inputVolts };
}
