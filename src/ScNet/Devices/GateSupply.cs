namespace ScNet.Devices;

/// <summary>A node of the converter that can supply a gate in one on-phase, over the whole input range or a part of it.</summary>
public sealed class GateSupply
{
    internal GateSupply(string node, Capacitor? capacitor, Quantity perVolt, double fromInputVolts, double toInputVolts, bool coversRange)
    {
        Node = node;
        Capacitor = capacitor;
        DrivePerVoltOfInput = perVolt;
        FromInputVolts = fromInputVolts;
        ToInputVolts = toInputVolts;
        CoversRange = coversRange;
    }

    /// <summary>The node that the gate is put on.</summary>
    public string Node { get; }

    /// <summary>A capacitor between that node and the source in this phase, which then is the supply; null where none is.</summary>
    public Capacitor? Capacitor { get; }

    /// <summary>The gate-source voltage that it gives, without sign, per volt of input.</summary>
    public Quantity DrivePerVoltOfInput { get; }

    /// <summary>The lowest input voltage in volts (V) of the range at which it gives the drive voltage and keeps the gate rating.</summary>
    public double FromInputVolts { get; }

    /// <summary>The highest such input voltage in volts (V).</summary>
    public double ToInputVolts { get; }

    /// <summary>Whether it does so over the whole range of the mode.</summary>
    public bool CoversRange { get; }

    /// <summary>"vout (1/3)".</summary>
    public override string ToString() => Capacitor is null
        ? $"{Node} ({DrivePerVoltOfInput})"
        : $"{Node} by {Capacitor.Name} ({DrivePerVoltOfInput})";
}
