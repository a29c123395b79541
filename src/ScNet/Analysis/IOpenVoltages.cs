namespace ScNet.Analysis;

/// <summary>The voltages that averages allow, to be settled by ripple, controllers and component values.</summary>
internal interface IOpenVoltages
{
    /// <summary>Whether no component value counts, so that one settlement serves every converter of the topology.</summary>
    bool IsFreeOfValues { get; }

    /// <summary>Settles what averages leave open.</summary>
    /// <param name="converter">The converter with its inductances.</param>
    SettledVoltages Settle(Converter converter);
}
