namespace ScNet.Design.Sizing;

/// <summary>By what the kind and the stack of each element are chosen among those that withstand its voltage.</summary>
public enum DeviceCriterion
{
    /// <summary>By the loss that it causes, at what the area, the resistance and the frequencies are worth in the whole.</summary>
    LeastLoss,

    /// <summary>By the area for its value.</summary>
    LeastArea,
}
