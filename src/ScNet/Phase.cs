using Fractions;

namespace ScNet;

/// <summary>One interval of the switching period, during which every switch is either open or closed.</summary>
public sealed class Phase
{
    internal Phase(int number, string name, Fraction duty)
    {
        Number = number;
        Name = name;
        Duty = duty;
    }

    /// <summary>The position in the period, from 1. Arrays over phases hold phase 1 at index 0.</summary>
    public int Number { get; }

    /// <summary>The name; the number where none was given.</summary>
    public string Name { get; }

    /// <summary>The fraction of the period that the phase lasts, exactly as it was written (0.3 is 3/10).</summary>
    public Fraction Duty { get; }

    /// <summary>The name.</summary>
    public override string ToString() => Name;
}
