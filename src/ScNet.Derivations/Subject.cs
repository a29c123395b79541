namespace ScNet.Derivations;

/// <summary>What a value belongs to, by position instead of by name.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Element">The position in <see cref="Converter.Capacitors"/> or <see cref="Converter.Switches"/>; 0 for ratio and ports.</param>
/// <param name="Phase">The phase from 0; 0 where the value belongs to the whole period.</param>
/// <param name="IsCapacitor">Whether the element is a capacitor.</param>
internal readonly record struct Subject(StatementKind Kind, int Element = 0, int Phase = 0, bool IsCapacitor = false);
