namespace ScNet.Design.Sizing;

/// <summary>What an element may be made of.</summary>
/// <typeparam name="T">The sort of device.</typeparam>
/// <param name="Device">The kind.</param>
/// <param name="Count">The devices in series.</param>
internal readonly record struct ElementOption<T>(T Device, int Count);
