namespace ScNet.Devices;

/// <summary>Which way a switch device is driven.</summary>
public enum DevicePolarity
{
    /// <summary>It conducts with the gate above the source; it sits on the lower side of what it blocks.</summary>
    NType,

    /// <summary>It conducts with the gate below the source; it sits on the upper side of what it blocks.</summary>
    PType,
}
