namespace ScNet.Devices;

/// <summary>How an element compares with the rating of its device.</summary>
public enum RatingOutcome
{
    /// <summary>Nothing bounds its voltage at some place: the verdict is what is known, a lower bound.</summary>
    Undetermined,

    /// <summary>One device withstands the voltage.</summary>
    WithinRating,

    /// <summary>A stack withstands the voltage, of as many devices as the verdict says.</summary>
    NeedsStack,

    /// <summary>It would take more devices in series than the limit allows.</summary>
    NotAllowed,
}
