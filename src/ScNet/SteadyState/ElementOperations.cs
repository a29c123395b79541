using ScNet.Analysis;

namespace ScNet.SteadyState;

/// <summary>Currents, voltages and losses of every element over a period, read off its waveforms.</summary>
/// <param name="converter">The converter.</param>
/// <param name="signals">Its waveforms.</param>
/// <param name="known">Which voltages are determined.</param>
/// <param name="closed">Per phase, or stretch of one, and switch: whether it is closed.</param>
/// <param name="frequencyHz">The frequency of the period.</param>
internal sealed class ElementOperations(Converter converter, IPeriodicSignals signals, KnownPotentials known, bool[][] closed, double frequencyHz)
{
    /// <summary>A switch by its position.</summary>
    public SwitchOperation OfSwitch(int index)
    {
        Switch @switch = converter.Switches[index];
        PhaseWaveform?[] currents = [.. Phases().Select(j => signals.SwitchCurrent(j, index))];
        double square = frequencyHz * currents.Sum(w => w?.SquareIntegral() ?? 0);
        int[] open = [.. Phases().Where(j => !closed[j][index])];
        Interval<double> seen = Intervals.Empty<double>();
        foreach (int phase in open.Where(j => known.AcrossSwitch(index, j)))
        {
            seen = seen.Hull(WaveformRange.Of(signals.SwitchVoltage(phase, index)));
        }

        seen = seen.IsDetermined ? seen : default;
        Interval<double> blocking = open.All(j => known.AcrossSwitch(index, j)) ? seen : default;
        return new SwitchOperation(@switch, Math.Sqrt(square), WaveformRange.Peak(currents), square * @switch.Ohms, blocking, seen);
    }

    /// <summary>A capacitor by its position, its plates included.</summary>
    public CapacitorOperation OfCapacitor(int index)
    {
        Capacitor capacitor = converter.Capacitors[index];
        PhaseWaveform[] currents = [.. Phases().Select(j => signals.CapacitorCurrent(j, index))];
        PhaseWaveform[] voltages = [.. Phases().Select(j => signals.CapacitorVoltage(j, index))];
        double square = frequencyHz * currents.Sum(w => w.SquareIntegral());
        double? average = known.OfCapacitor(index)
            ? voltages.Select((w, j) => w.Mean() * signals.Durations[j]).Sum() * frequencyHz
            : null;

        // a square beyond the range of numbers is infinite, and loses nothing in no resistance
        double dissipation = capacitor.EsrOhms > 0 ? square * capacitor.EsrOhms : 0;
        return new CapacitorOperation(
            capacitor, average, WaveformRange.PeakToPeak(voltages), Math.Sqrt(square), WaveformRange.Peak(currents), dissipation, ChargingWatts(capacitor.Farads, voltages))
        {
            BottomPlate = capacitor.Plates.BottomFarads > 0 ? OfParasitic(FirstPlate(index)) : null,
            TopPlate = capacitor.Plates.TopFarads > 0 ? OfParasitic(FirstPlate(index) + (capacitor.Plates.BottomFarads > 0 ? 1 : 0)) : null,
        };
    }

    /// <summary>An inductor by its position.</summary>
    public InductorOperation OfInductor(int index)
    {
        Inductor inductor = converter.Inductors[index];
        PhaseWaveform[] currents = [.. Phases().Select(j => signals.InductorCurrent(j, index))];
        double square = frequencyHz * currents.Sum(w => w.SquareIntegral());
        double average = frequencyHz * currents.Select((w, j) => w.Mean() * signals.Durations[j]).Sum();
        return new InductorOperation(inductor, average, WaveformRange.PeakToPeak(currents), Math.Sqrt(square), WaveformRange.Peak(currents), square * inductor.Ohms);
    }

    // The number of plates of the capacitors before one.
    private int FirstPlate(int capacitor) =>
        converter.Capacitors.Take(capacitor).Sum(c => (c.Plates.BottomFarads > 0 ? 1 : 0) + (c.Plates.TopFarads > 0 ? 1 : 0));

    /// <summary>A parasitic capacitance by its position in <see cref="Converter.ParasiticBranches"/>.</summary>
    public ParasiticOperation OfParasitic(int index)
    {
        double farads = signals.ParasiticFarads(index);
        PhaseWaveform[] voltages = [.. Phases().Select(j => signals.ParasiticVoltage(j, index))];
        double square = Phases().Sum(j => signals.ParasiticCurrent(j, index).SquareIntegral());
        return new ParasiticOperation(farads, WaveformRange.PeakToPeak(voltages), Math.Sqrt(frequencyHz * square), ChargingWatts(farads, voltages));
    }

    // f Σ q² / (2 C)
    private double ChargingWatts(double farads, PhaseWaveform[] voltages) => 0.5 * frequencyHz * farads * voltages.Sum(v => v.Change * v.Change);

    // phases, or the stretches into which events divide them
    private IEnumerable<int> Phases() => Enumerable.Range(0, closed.Length);
}
