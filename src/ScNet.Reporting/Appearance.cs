namespace ScNet.Reporting;

/// <summary>On what ground a picture is drawn.</summary>
public enum Appearance
{
    /// <summary>Dark lines on white.</summary>
    Light,

    /// <summary>Light lines on a dark ground.</summary>
    Dark,
}
