namespace ScNet.Design.Requirements;

/// <summary>What the load draws for a share of the time.</summary>
/// <param name="Name">The name of this state of the load, such as "sleep".</param>
/// <param name="Amperes">The current in amperes (A).</param>
/// <param name="Share">The share of the time, above 0; all shares add up to 1.</param>
/// <param name="OutputVolts">The output voltage in volts (V) then; null for every voltage that is asked for.</param>
public sealed record LoadShare(string Name, double Amperes, double Share, double? OutputVolts = null);
