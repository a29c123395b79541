namespace ScNet.Devices;

/// <summary>A node of the converter that can supply a gate in one on-phase, over the whole input range or a part of it.</summary>
public sealed class GateSupply
{
    internal GateSupply(string node, Capacitor? capacitor, Quantity perVolt, Interval<double> inputVolts, bool coversRange)
    {
        Node = node;
        Capacitor = capacitor;
        DrivePerVoltOfInput = perVolt;
        InputVolts = inputVolts;
        CoversRange = coversRange;
    }

    /// <summary>The node that the gate is put on.</summary>
    public string Node { get; }

    /// <summary>A capacitor between that node and the source in this phase, which then is the supply; null where none is.</summary>
    public Capacitor? Capacitor { get; }

    /// <summary>The gate-source voltage that it gives, without sign, per volt of input.</summary>
    public Quantity DrivePerVoltOfInput { get; }

    /// <summary>The input voltages in volts (V), of those of the mode, at which it gives the drive voltage and keeps the gate rating.</summary>
    public Interval<double> InputVolts { get; }

    /// <summary>Whether it does so over the whole range of the mode.</summary>
    public bool CoversRange { get; }

    /// <summary>"vout (1/3)", or "vout (1/3) at 3.4 V to 4 V of input" where it serves in a part of the range.</summary>
    public override string ToString() =>
        $"{Node}{(Capacitor is null ? string.Empty : $" by {Capacitor.Name}")} ({DrivePerVoltOfInput}){(CoversRange ? string.Empty : $" at {InputVolts.ToString("V")} of input")}";
}
