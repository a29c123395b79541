namespace ScNet.Derivations.Checking;

/// <summary>
/// The unknowns of the linear equations, numbered: charges of capacitors, switches, input and output by
/// phase, capacitor voltages, the ratio, blocking voltages by phase.
/// </summary>
internal sealed class Unknowns(Converter converter)
{
    public const int None = -1;

    private readonly int _phases = converter.Phases.Count;
    private readonly int _capacitors = converter.Capacitors.Count;
    private readonly int _switches = converter.Switches.Count;

    private int FirstSwitch => _capacitors * _phases;

    private int FirstInput => FirstSwitch + (_switches * _phases);

    private int FirstOutput => FirstInput + _phases;

    private int FirstVoltage => FirstOutput + _phases;

    public int Ratio => FirstVoltage + _capacitors;

    public int Count => Ratio + 1 + (_switches * _phases);

    public int Capacitor(int capacitor, int phase) => (capacitor * _phases) + phase;

    public int Switch(int @switch, int phase) => FirstSwitch + (@switch * _phases) + phase;

    public int Input(int phase) => FirstInput + phase;

    public int Output(int phase) => FirstOutput + phase;

    public int Voltage(int capacitor) => FirstVoltage + capacitor;

    public int Blocking(int @switch, int phase) => Ratio + 1 + (@switch * _phases) + phase;

    /// <summary>The number of a subject, or -1 where no linear equation speaks of it.</summary>
    public int Of(Subject subject) => subject.Kind switch
    {
        StatementKind.Ratio => Ratio,
        StatementKind.InputCharge => Input(subject.Phase),
        StatementKind.OutputCharge => Output(subject.Phase),
        StatementKind.CapacitorCharge => Capacitor(subject.Element, subject.Phase),
        StatementKind.SwitchCharge => Switch(subject.Element, subject.Phase),
        StatementKind.CapacitorVoltage => Voltage(subject.Element),
        StatementKind.BlockingVoltage => Blocking(subject.Element, subject.Phase),
        _ => None,
    };

    /// <summary>The subject of a number.</summary>
    public Subject At(int unknown)
    {
        return unknown switch
        {
            _ when unknown < FirstSwitch => ByPhase(StatementKind.CapacitorCharge, unknown, isCapacitor: true),
            _ when unknown < FirstInput => ByPhase(StatementKind.SwitchCharge, unknown - FirstSwitch),
            _ when unknown < FirstOutput => new Subject(StatementKind.InputCharge, 0, unknown - FirstInput),
            _ when unknown < FirstVoltage => new Subject(StatementKind.OutputCharge, 0, unknown - FirstOutput),
            _ when unknown < Ratio => new Subject(StatementKind.CapacitorVoltage, unknown - FirstVoltage, 0, true),
            _ when unknown == Ratio => new Subject(StatementKind.Ratio),
            _ => ByPhase(StatementKind.BlockingVoltage, unknown - Ratio - 1),
        };

        Subject ByPhase(StatementKind kind, int offset, bool isCapacitor = false) =>
            new(kind, offset / _phases, offset % _phases, isCapacitor);
    }

    /// <summary>The name of the element, or of the port.</summary>
    public string Name(int unknown) => At(unknown) switch
    {
        { Kind: StatementKind.Ratio } => converter.OutputNode,
        { Kind: StatementKind.InputCharge } => "input",
        { Kind: StatementKind.OutputCharge } => "output",
        { IsCapacitor: true, Element: var c } => converter.Capacitors[c].Name,
        { Element: var s } => converter.Switches[s].Name,
    };
}
