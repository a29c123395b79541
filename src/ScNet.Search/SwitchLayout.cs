namespace ScNet.Search;

/// <summary>How the switches of a node of a phase are laid out.</summary>
public enum SwitchLayout
{
    /// <summary>In a row by potential, so that each blocks as little as any switch of the wiring must.</summary>
    LowestBlocking,

    /// <summary>Straight from where charge comes from to where it goes, so that the switches together carry as little as they can.</summary>
    LeastCharge,
}
