namespace ScNet;

/// <summary>What is connected to the output node.</summary>
public enum LoadKind
{
    /// <summary>An output reservoir so large that the output node is a voltage source to the flying capacitors.</summary>
    Stiff,

    /// <summary>A constant current; every capacitor on the output node is an element of the converter like any other.</summary>
    Current,
}
