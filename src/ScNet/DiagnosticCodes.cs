namespace ScNet;

/// <summary>The codes of all findings. A code never changes its meaning.</summary>
public static class DiagnosticCodes
{
    /// <summary>The document is not valid TOML.</summary>
    public const string Syntax = "syntax";

    /// <summary>A key that the document does not have.</summary>
    public const string UnknownKey = "unknown-key";

    /// <summary>A key or table that must be there is missing.</summary>
    public const string MissingKey = "missing-key";

    /// <summary>A value of the wrong type or form.</summary>
    public const string WrongValue = "wrong-value";

    /// <summary>Two elements, modes or phases share a name.</summary>
    public const string DuplicateName = "duplicate-name";

    /// <summary>A phase number or name that the converter does not have.</summary>
    public const string UnknownPhase = "unknown-phase";

    /// <summary>A mode names a switch that the converter does not have.</summary>
    public const string UnknownSwitch = "unknown-switch";

    /// <summary>A value that is not finite and positive (or not finite and at least zero for an ESR).</summary>
    public const string ValueOutOfRange = "value-out-of-range";

    /// <summary>Duties that do not sum to one.</summary>
    public const string DutySum = "duty-sum";

    /// <summary>Shares of time that do not sum to one.</summary>
    public const string ShareSum = "share-sum";

    /// <summary>A discharge curve that does not run from full to empty.</summary>
    public const string DischargeNotFalling = "discharge-not-falling";

    /// <summary>A value outside of a range that the same requirement gives.</summary>
    public const string OutsideRange = "outside-range";

    /// <summary>Fewer than two phases.</summary>
    public const string TooFewPhases = "too-few-phases";

    /// <summary>Both terminals of an element lie on one node.</summary>
    public const string SameNode = "same-node";

    /// <summary>Input, output and reference are not three different nodes.</summary>
    public const string PortClash = "port-clash";

    /// <summary>Input or output node that no element touches.</summary>
    public const string PortUnconnected = "port-unconnected";

    /// <summary>Both "on" in the switches and a table of modes.</summary>
    public const string OnAndModes = "on-and-modes";

    /// <summary>A file that cannot be read.</summary>
    public const string FileUnreadable = "file-unreadable";

    /// <summary>A file larger than the reader accepts.</summary>
    public const string FileTooLarge = "file-too-large";

    /// <summary>Closed switches connect the input to the reference.</summary>
    public const string InputShorted = "input-shorted";

    /// <summary>Closed switches connect a stiff output to the reference.</summary>
    public const string OutputShorted = "output-shorted";

    /// <summary>Closed switches short a capacitor that other loops require to hold a voltage.</summary>
    public const string CapacitorShorted = "capacitor-shorted";

    /// <summary>Loops of different phases demand different voltages.</summary>
    public const string VoltageConflict = "voltage-conflict";

    /// <summary>No charge can ever reach the output.</summary>
    public const string OutputNeverCharged = "output-never-charged";

    /// <summary>Charge to the output would pass a capacitor in one direction only.</summary>
    public const string CapacitorUnbalanced = "capacitor-unbalanced";

    /// <summary>The network forces the output to zero volts.</summary>
    public const string ZeroRatio = "zero-ratio";

    /// <summary>Component values share charge among so many ways that all meet one another that solving for it would hang.</summary>
    public const string FlowTooDense = "flow-too-dense";

    /// <summary>So many capacitors whose voltages nothing fixes that telling how they move together would run out of memory.</summary>
    public const string VoltagesTooOpen = "voltages-too-open";

    /// <summary>An impedance, operating point or sensitivities of a network so large that finding them would run for minutes or out of memory.</summary>
    public const string SteadyStateTooLarge = "steady-state-too-large";

    /// <summary>An inductive network whose state does not settle to a period, or whose output no current reaches.</summary>
    public const string NoPeriodicState = "no-periodic-state";

    /// <summary>A load current with no path in some phase.</summary>
    public const string LoadInterrupted = "load-interrupted";

    /// <summary>An inductor whose current has no path in some phase.</summary>
    public const string InductorInterrupted = "inductor-interrupted";

    /// <summary>A controller is said to hold a capacitor at another voltage than loops do.</summary>
    public const string ControlledContradiction = "controlled-contradiction";

    /// <summary>A controller is said to hold a capacitor at another voltage than ripple would bring it to.</summary>
    public const string ControlledAgainstBalance = "controlled-against-balance";

    /// <summary>Capacitor voltages that only resistances fix.</summary>
    public const string BalancedByLosses = "balanced-by-losses";

    /// <summary>Constant inductor currents leave a capacitor unbalanced, so that its voltage moves with the load.</summary>
    public const string LoadMovesVoltages = "load-moves-voltages";

    /// <summary>An inductor's current ends a phase, so that averages hold at the boundary of discontinuous conduction only.</summary>
    public const string DiscontinuousConduction = "discontinuous-conduction";

    /// <summary>A result that there is none of for a converter with inductors.</summary>
    public const string InductorsUnsupported = "inductors-unsupported";

    /// <summary>A capacitor that is in no loop in any phase.</summary>
    public const string CapacitorUnconnected = "capacitor-unconnected";

    /// <summary>A connected capacitor whose voltage nothing fixes.</summary>
    public const string CapacitorVoltageUndetermined = "capacitor-voltage-undetermined";

    /// <summary>A node that only one terminal touches.</summary>
    public const string FloatingTerminal = "floating-terminal";

    /// <summary>A node whose name looks as if the reference node "gnd" were meant.</summary>
    public const string ReferenceSpelling = "reference-spelling";

    /// <summary>An element whose voltage no kind of device withstands, with as many in series as are allowed.</summary>
    public const string DeviceRatingExceeded = "device-rating-exceeded";

    /// <summary>An element whose voltage nothing bounds at some place, so that its stack is a lower bound.</summary>
    public const string StressUndetermined = "stress-undetermined";

    /// <summary>An operating point at which no sizes within the area hold the output.</summary>
    public const string PointUnreachable = "point-unreachable";

    /// <summary>A converter with inductors where sizes of switches and capacitors alone are asked for: the duty that regulates it belongs to its sizes.</summary>
    public const string InductorSizes = "inductor-sizes";

    /// <summary>A file of a part of an atlas that is cut short or changed since it was written.</summary>
    public const string ShardDamaged = "shard-damaged";

    /// <summary>A file of a part of an atlas of another format, size or division than its neighbours, or of three phases, which have no parts.</summary>
    public const string ShardMismatch = "shard-mismatch";

    /// <summary>Parts of an atlas that there is no sound file of.</summary>
    public const string ShardMissing = "shard-missing";

    /// <summary>Two files of the same part of an atlas with different contents.</summary>
    public const string ShardDoubled = "shard-doubled";

    /// <summary>Parts of an atlas that together decide more or fewer pairs than there are.</summary>
    public const string ShardCounts = "shard-counts";
}
