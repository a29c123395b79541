namespace ScNet.SteadyState;

/// <summary>The waveforms of every element at one operating point; phases are numbered from 0, elements by their position.</summary>
internal interface IPeriodicSignals
{
    /// <summary>The length of each phase in seconds.</summary>
    double[] Durations { get; }

    /// <summary>The current through a switch from its first terminal in amperes; null where it does not conduct.</summary>
    PhaseWaveform? SwitchCurrent(int phase, int index);

    /// <summary>The current into a capacitor's first terminal in amperes.</summary>
    PhaseWaveform CapacitorCurrent(int phase, int index);

    /// <summary>The voltage of a capacitance, behind its series resistance, in volts.</summary>
    PhaseWaveform CapacitorVoltage(int phase, int index);

    /// <summary>The current through an inductor from its first terminal in amperes.</summary>
    PhaseWaveform InductorCurrent(int phase, int index);

    /// <summary>A parasitic capacitance in farads, by its position in <see cref="Converter.ParasiticBranches"/>.</summary>
    double ParasiticFarads(int index);

    /// <summary>The current into its first terminal in amperes.</summary>
    PhaseWaveform ParasiticCurrent(int phase, int index);

    /// <summary>Its voltage in volts.</summary>
    PhaseWaveform ParasiticVoltage(int phase, int index);

    /// <summary>The voltage across a switch, first minus second terminal, where it is determined, in volts.</summary>
    PhaseWaveform SwitchVoltage(int phase, int index);

    /// <summary>The current out of the input source in amperes.</summary>
    PhaseWaveform InputCurrent(int phase);

    /// <summary>The potential of a node against the reference, where it is determined, in volts.</summary>
    PhaseWaveform Potential(int phase, string node);
}
