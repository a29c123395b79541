namespace ScNet.Search.Triples;

/// <summary>What the capacitors of a triple of loop spaces ask for, as doubles that stand for fractions as in <see cref="Pairs.MeasureKey"/>.</summary>
/// <param name="ChargeVoltage">See <see cref="NetworkMeasures.CapacitorChargeVoltage"/>.</param>
/// <param name="HighestVoltage">See <see cref="NetworkMeasures.HighestCapacitorVoltage"/>.</param>
/// <param name="Charge">See <see cref="NetworkMeasures.CapacitorCharge"/>.</param>
internal readonly record struct TripleSums(double ChargeVoltage, double HighestVoltage, double Charge)
{
    /// <summary>Nothing is above the other's.</summary>
    public bool IsWithin(in TripleSums other) => ChargeVoltage <= other.ChargeVoltage && HighestVoltage <= other.HighestVoltage && Charge <= other.Charge;
}
