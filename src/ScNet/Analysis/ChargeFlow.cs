namespace ScNet.Analysis;

/// <summary>
/// The charge multiplier of every branch in every phase by Kirchhoff's current law and charge balance,
/// per unit of charge delivered to the load in one period.
/// </summary>
/// <remarks>
/// Signs: positive when charge leaves the input source, enters the load, enters a capacitor's first
/// terminal, or flows through a switch from its first terminal to its second. Where component values
/// decide, the capacitors' flow is that of the slow-switching limit and the switches', the input's and
/// the output's that of the fast-switching limit, which also settles how inductors share a current. Undetermined
/// throughout where averages can carry no load (<see cref="ModeAnalysis.CarriesLoad"/>). Source: M. D. Seeman and S. R. Sanders, "Analysis and
/// optimization of switched-capacitor DC-DC converters", IEEE Trans. Power Electronics 23(2), 2008 (from memory).
/// </remarks>
public sealed class ChargeFlow
{
    internal ChargeFlow(FlowDetermination determinedBy, PhaseValues input, PhaseValues output, PhaseTable capacitors, PhaseTable switches, PhaseTable inductors)
    {
        DeterminedBy = determinedBy;
        Input = input;
        Output = output;
        Capacitors = capacitors;
        Switches = switches;
        Inductors = inductors;
    }

    /// <summary>What decides the capacitors' flow.</summary>
    public FlowDetermination DeterminedBy { get; }

    /// <summary>Charge that leaves the input source in each phase.</summary>
    public PhaseValues Input { get; }

    /// <summary>Charge that enters the load in each phase; the sum over the phases is 1.</summary>
    public PhaseValues Output { get; }

    /// <summary>Charge that enters each capacitor's first terminal; by name or by position as in <see cref="Converter.Capacitors"/>, then by phase.</summary>
    public PhaseTable Capacitors { get; }

    /// <summary>Charge that flows through each switch from its first terminal to its second; by name or by position as in <see cref="Converter.Switches"/>, then by phase.</summary>
    public PhaseTable Switches { get; }

    /// <summary>
    /// Charge that flows through each inductor from its first terminal to its second, current times duty; by name or by
    /// position as in <see cref="Converter.Inductors"/>, then by phase.
    /// </summary>
    public PhaseTable Inductors { get; }

    /// <summary>What decides the flow, and the charges of ports and capacitors.</summary>
    public override string ToString() => $"decided by {DeterminedBy}: input {Input}, output {Output}, capacitors {Capacitors}";
}
