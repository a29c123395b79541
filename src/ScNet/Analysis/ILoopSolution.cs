using System.Numerics;
using ScNet.Kernel;

namespace ScNet.Analysis;

/// <summary>
/// The eliminated loop equations of a mode, whatever integers they were solved on. Rows are equations as in
/// <see cref="LoopSet"/>, columns and vectors over branches as in <see cref="SwitchedNetwork"/>.
/// </summary>
internal interface ILoopSolution
{
    /// <summary>Whether the equations fix the output's voltage.</summary>
    bool IsOutputFixed { get; }

    /// <summary>The pivots in the order taken.</summary>
    IReadOnlyList<(int Row, int Column)> Pivots { get; }

    /// <summary>What elimination made of a row: its columns and their factors, in no order.</summary>
    (int Column, BigInteger Factor)[] ReducedRow(int row);

    /// <summary>The combination of the first equations that a reduced row is, by equation.</summary>
    Rational<BigInteger>[] EquationWeights(int row);

    /// <summary>The voltage of every branch, undetermined ones taken as zero.</summary>
    Rational<BigInteger>[] Voltages();

    /// <summary>The charge round each loop that delivers one unit to the load and balances every capacitor.</summary>
    Rational<BigInteger>[] LoopCharges();

    /// <summary>How all voltages move when a branch that is not fixed moves by one.</summary>
    Rational<BigInteger>[] Movement(int branch);

    /// <summary>Charges round the loops that circulate besides: one vector per row that the others imply.</summary>
    List<Rational<BigInteger>[]> Circulations();
}
