using System.Runtime.Intrinsics;
using ScNet.Search.LoopSpaces;

namespace ScNet.Search.Pairs;

/// <summary>What all wirings of a pair share: the scales of voltage and charge, and the sums over capacitors.</summary>
internal readonly struct PairSums
{
    private readonly long _inputVoltage;
    private readonly long _outputCharge;
    private readonly long _delivered;
    private readonly long _capacitorCharge;
    private readonly double _capacitorChargeVoltage;
    private readonly double _highestCapacitorVoltage;
    private readonly double _chargePerOutput;

    private PairSums(int[] voltages, PairCharges charges)
    {
        _inputVoltage = voltages[LoopSpace.InputColumn];
        _outputCharge = charges.OutputCharge;
        _delivered = _outputCharge * Math.Abs(voltages[LoopSpace.OutputColumn]);
        long chargeVoltage = 0, highest = 0;
        for (int branch = LoopSpace.FirstCapacitorColumn; branch < voltages.Length; branch++)
        {
            long charge = Math.Abs(charges.Fixed[branch]), voltage = Math.Abs(voltages[branch]);
            _capacitorCharge += charge;
            chargeVoltage += charge * voltage;
            highest = Math.Max(highest, voltage);
        }

        _capacitorChargeVoltage = MeasureKey.Quotient(chargeVoltage, _delivered);
        _highestCapacitorVoltage = MeasureKey.Quotient(highest, _inputVoltage);
        _chargePerOutput = MeasureKey.Quotient(_capacitorCharge, _outputCharge);
    }

    /// <summary>The sums of a pair.</summary>
    /// <param name="voltages">The branches' voltages, that of the input positive.</param>
    /// <param name="charges">The charges.</param>
    public static PairSums Of(int[] voltages, PairCharges charges) => new(voltages, charges);

    /// <summary>The measures of one of its networks.</summary>
    /// <param name="switches">The sums over switches.</param>
    /// <param name="swing">Σ |charge| · swing² over capacitors.</param>
    /// <param name="switchCharge">Σ |charge| over switches, in the layout.</param>
    /// <param name="switchVoltage">The highest voltage that they block, in the layout.</param>
    public MeasureKey KeyOf(in SwitchSums switches, long swing, int switchCharge, int switchVoltage) => new(
        Vector256.Create(
            _capacitorChargeVoltage,
            MeasureKey.Quotient(switches.ChargeVoltage, _delivered),
            switches.Count,
            _highestCapacitorVoltage),
        Vector256.Create(
            MeasureKey.Quotient(switchVoltage, _inputVoltage),
            MeasureKey.Quotient(swing, _capacitorCharge * _inputVoltage * _inputVoltage),
            _chargePerOutput,
            MeasureKey.Quotient(switchCharge, _outputCharge)));
}
