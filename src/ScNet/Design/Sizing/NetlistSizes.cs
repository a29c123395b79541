using ScNet.Analysis;
using ScNet.Design.Losses;
using ScNet.Devices;
using ScNet.SteadyState;
using ScNet.Stress;

namespace ScNet.Design.Sizing;

/// <summary>A converter with the values of its netlist, made of the kinds of a process.</summary>
public static class NetlistSizes
{
    /// <summary>The devices that lose least at a load, for the netlist's values all scaled by one factor each to the totals of a comparison.</summary>
    /// <param name="analysis">The analysis of the converter.</param>
    /// <param name="conditions">The common ground, with input voltage and frequency.</param>
    /// <param name="loadAmperes">Average current out of the output node in amperes (A).</param>
    /// <param name="process">What it may be made of.</param>
    /// <exception cref="ArgumentOutOfRangeException">The load current is out of range.</exception>
    /// <exception cref="ScNetException">No kind withstands what an element needs: <see cref="DiagnosticCodes.DeviceRatingExceeded"/>.</exception>
    public static SizedConverter AtTotals(ConverterAnalysis analysis, ComparisonConditions conditions, double loadAmperes, Process process)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        ArgumentNullException.ThrowIfNull(conditions);
        ConverterAnalysis scaled = ConverterAnalysis.Of(ComparedLoad.AtTotals(analysis.Converter, conditions));
        Interval<double> volts = new(conditions.InputVoltageVolts, conditions.InputVoltageVolts);
        return Of(ConverterStress.Of(scaled, volts), process, new OperatingPoint(conditions.InputVoltageVolts, loadAmperes, conditions.FrequencyHz));
    }

    /// <summary>
    /// Gives every element a kind and a stack that withstand its voltages in all modes and at all changes between two, with the
    /// netlist's capacitance and on-resistance: those that lose least at an operating point, over all modes together, or those of the least area where none is
    /// named. Wiring adds to the on-resistances, series resistances of capacitors are those of the kinds, inductors those of the netlist.
    /// </summary>
    /// <remarks>
    /// The least area takes the densest capacitors, which are often those with the heaviest plates: name an operating point where one is known. As the
    /// values stand, what an element loses does not depend on the others, but for the currents that series resistances share among themselves; these count
    /// as their share of the fast limit. A density against bias counts at the voltage that the capacitor holds there, where it gives
    /// least of all modes; without a point it is the nominal one. Modes in which a current ends phases, and those without a result, have no say.
    /// </remarks>
    /// <param name="stress">The stress of the converter over the input voltages at which it runs.</param>
    /// <param name="process">What it may be made of.</param>
    /// <param name="point">Where it runs; null for the least area.</param>
    /// <exception cref="ScNetException">No kind withstands what an element needs: <see cref="DiagnosticCodes.DeviceRatingExceeded"/>.</exception>
    public static SizedConverter Of(ConverterStress stress, Process process, OperatingPoint? point = null)
    {
        ArgumentNullException.ThrowIfNull(stress);
        ArgumentNullException.ThrowIfNull(process);
        Converter converter = stress.Analysis.Converter;
        ModeAnalysis[] modes = [.. stress.Analysis.Results.Where(m => m.CarriesLoad && m.Mode.UntilZeroPhases.All(p => p.Count == 0))];
        ElementOptions options = ElementOptions.Of(stress, process, point is null ? null : HeldVoltages.Of(converter, modes.Select(m => (m, point.InputVoltageVolts))));
        if (options.Findings.Any(f => f.Severity == DiagnosticSeverity.Error))
        {
            throw new ScNetException($"No devices of {process.Name} make {converter.Name}.", options.Findings);
        }

        double[] farads = [.. converter.Capacitors.Select(c => c.Farads)], ohms = [.. converter.Switches.Select(s => s.Ohms)];
        InductorDevice[] inductors = [.. converter.Inductors.Select(l => new InductorDevice { Name = l.Name, Source = "netlist", Henries = l.Henries, Ohms = l.Ohms })];
        Dictionary<string, double[]> watts = point is null ? [] : Watts(point);
        return At(
            [.. options.Capacitors.Select((own, i) => Best(converter.Capacitors[i].Name, own, o => new StackedCapacitor(o.Device, o.Count, farads[i], o.HeldVolts).AreaSquareMetres))],
            [.. options.Switches.Select((own, i) => Best(converter.Switches[i].Name, own, o => new StackedSwitch(o.Device, o.Count, ohms[i]).AreaSquareMetres))]);

        ElementOption<T> Best<T>(string name, ElementOption<T>[] own, Func<ElementOption<T>, double> area) =>
            own.Select((option, k) => (Option: option, Watts: watts.TryGetValue(name, out double[]? known) ? known[k] : 0, Area: area(option))).MinBy(o => (o.Watts, o.Area)).Option;

        SizedConverter At(ElementOption<CapacitorDevice>[] capacitors, ElementOption<SwitchDevice>[] switches) =>
            SizedValues.Build(converter, process, capacitors, switches, farads, ohms, inductors);

        // what each element loses with each of its options, all modes together
        Dictionary<string, double[]> Watts(OperatingPoint at)
        {
            int most = options.Capacitors.Select(o => o.Length).Concat(options.Switches.Select(o => o.Length)).Max();
            Dictionary<string, double[]> sums = converter.Capacitors.Select(c => c.Name).Concat(converter.Switches.Select(s => s.Name))
                .ToDictionary(n => n, _ => new double[most], StringComparer.Ordinal);
            for (int k = 0; k < most; k++)
            {
                SizedConverter all = At(
                    [.. options.Capacitors.Select(o => o[Math.Min(k, o.Length - 1)])], [.. options.Switches.Select(o => o[Math.Min(k, o.Length - 1)])]);
                foreach (LossTerms losses in modes.Select(m => LossTerms.Of(all, m.WithValuesOf(all.Converter))))
                {
                    losses.Terms.ToList().ForEach(t => Add(t.Element, k, t.Watts.At(at.InputVoltageVolts, at.LoadCurrentAmperes, at.FrequencyHz)));
                    losses.Diodes.ToList().ForEach(d => Add(d.Element, k, d.At(at.InputVoltageVolts, at.LoadCurrentAmperes, at.FrequencyHz, process.DeadTimeSeconds)));
                }
            }

            return sums;

            void Add(string element, int option, double lost)
            {
                if (sums.TryGetValue(element, out double[]? sum))
                {
                    sum[option] += lost;
                }
            }
        }
    }
}
