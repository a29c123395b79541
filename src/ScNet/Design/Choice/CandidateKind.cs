namespace ScNet.Design.Choice;

/// <summary>The class of a candidate.</summary>
public enum CandidateKind
{
    /// <summary>Switches and capacitors; the frequency regulates, and the modes are its gears.</summary>
    SwitchedCapacitor,

    /// <summary>Switches and inductors; the duty regulates.</summary>
    Inductive,

    /// <summary>Switches, capacitors and inductors; the duty regulates.</summary>
    Hybrid,

    /// <summary>A linear regulator, which turns the surplus voltage into heat.</summary>
    Linear,
}
