namespace ScNet.SteadyState.Conduction;

/// <summary>A part of a phase with the same connections: up to an event, or after it.</summary>
/// <param name="Phase">The phase, from 0.</param>
/// <param name="IsAfterEvent">Whether the event has been, so that every switch is open.</param>
/// <param name="HasEvent">Whether it ends before its phase does.</param>
internal readonly record struct Stretch(int Phase, bool IsAfterEvent, bool HasEvent);
