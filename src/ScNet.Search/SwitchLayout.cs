namespace ScNet.Search;

/// <summary>How the switches of a node of a phase are laid out.</summary>
public enum SwitchLayout
{
    /// <summary>In a row by potential, so that each blocks as little as any switch of the wiring must.</summary>
    LowestBlocking,

    /// <summary>Straight from where charge comes from to where it goes, so that the switches together carry as little as they can.</summary>
    LeastCharge,

    /// <summary>
    /// As few as make the wirings, of such the ones whose highest blocking voltage is the lowest. In two phases that is <see cref="LowestBlocking"/>; in more
    /// phases a switch that serves several may block more than each phase alone would ask for.
    /// </summary>
    Fewest,
}
