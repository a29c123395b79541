using ScNet.Devices;

namespace ScNet.Design.Requirements.Toml;

/// <summary>The numbers of the requirement itself.</summary>
internal static class RootNumbers
{
    public static readonly NumberKey Cell = NumberKey.Optional("cell_coulombs", "coulombs");
    public static readonly NumberKey SourceOhms = NumberKey.OrZero("source_ohms", "ohms");
    public static readonly NumberKey OutputFarads = NumberKey.OrZero("output_farads", "farads");
    public static readonly NumberKey Ripple = NumberKey.Optional("ripple_volts", "volts");
    public static readonly NumberKey Area = NumberKey.Optional("area_square_metres", "square metres");
    public static readonly NumberKey CapacitorArea = NumberKey.Optional("capacitor_area_square_metres", "square metres");
    public static readonly NumberKey SwitchArea = NumberKey.Optional("switch_area_square_metres", "square metres");
}

/// <summary>The numbers of a state of the load.</summary>
internal static class LoadNumbers
{
    public static readonly NumberKey Amperes = NumberKey.Required("amperes", "amperes");
    public static readonly NumberKey Share = NumberKey.Required("share", string.Empty, NumberBounds.Share);
    public static readonly NumberKey Output = NumberKey.Optional("output_volts", "volts");
}

/// <summary>The numbers of a process.</summary>
internal static class ProcessNumbers
{
    public static readonly NumberKey GateRail = NumberKey.Or(1, "gate_rail_efficiency", string.Empty, NumberBounds.Share);
    public static readonly NumberKey Wiring = NumberKey.OrZero("wiring_ohms", "ohms");
    public static readonly NumberKey DeadTime = NumberKey.OrZero("dead_time_seconds", "seconds");
}

/// <summary>The numbers of a kind of switches.</summary>
internal static class SwitchNumbers
{
    public static readonly NumberKey Rated = NumberKey.Required("rated_volts", "volts");
    public static readonly NumberKey Drive = NumberKey.Required("gate_drive_volts", "volts");
    public static readonly NumberKey GateRated = NumberKey.Required("gate_rated_volts", "volts");
    public static readonly NumberKey Threshold = NumberKey.OrZero("threshold_volts", "volts");
    public static readonly NumberKey Resistance = NumberKey.Required("ohm_micrometres", "ohm-micrometres");
    public static readonly NumberKey GateCharge = NumberKey.Required("gate_coulombs_per_micrometre", "coulombs per micrometre");
    public static readonly NumberKey JunctionCharge = NumberKey.Required("junction_coulombs_per_micrometre", "coulombs per micrometre");
    public static readonly NumberKey Leakage = NumberKey.OrZero("leakage_amperes_per_micrometre", "amperes per micrometre");
    public static readonly NumberKey Diode = NumberKey.Or(SwitchDevice.DefaultBodyDiodeVolts, "diode_volts", "volts");
    public static readonly NumberKey Recovery = NumberKey.OrZero("recovery_coulombs_per_micrometre", "coulombs per micrometre");
    public static readonly NumberKey Area = NumberKey.Required("square_metres_per_micrometre", "square metres per micrometre");
    public static readonly NumberKey StackArea = NumberKey.Or(1, "stack_area_factor", string.Empty);
    public static readonly NumberKey GuardSpacing = NumberKey.OrZero("guard_metres", "metres");
}

/// <summary>The numbers of a kind of capacitors.</summary>
internal static class CapacitorNumbers
{
    public static readonly NumberKey Rated = NumberKey.Required("rated_volts", "volts");
    public static readonly NumberKey Density = NumberKey.Required("farads_per_square_metre", "farads per square metre");
    public static readonly NumberKey BottomPlate = NumberKey.OrZero("bottom_plate_fraction", string.Empty);
    public static readonly NumberKey TopPlate = NumberKey.OrZero("top_plate_fraction", string.Empty);
    public static readonly NumberKey Esr = NumberKey.OrZero("esr_ohm_square_metres", "ohm square metres");
    public static readonly NumberKey Leakage = NumberKey.OrZero("leakage_amperes_per_square_metre", "amperes per square metre");
    public static readonly NumberKey StackArea = NumberKey.Or(1, "stack_area_factor", string.Empty);
    public static readonly NumberKey GuardSpacing = NumberKey.OrZero("guard_metres", "metres");
}

/// <summary>The numbers of an inductor.</summary>
internal static class InductorNumbers
{
    public static readonly NumberKey Henries = NumberKey.Required("henries", "henries");
    public static readonly NumberKey Ohms = NumberKey.Required("ohms", "ohms", NumberBounds.ZeroOrMore);
    public static readonly NumberKey Area = NumberKey.OrZero("area_square_metres", "square metres");
    public static readonly NumberKey Current = NumberKey.Optional("maximum_amperes", "amperes");
    public static readonly NumberKey Core = NumberKey.OrZero("core_watts", "watts");
    public static readonly NumberKey CoreFrequency = NumberKey.Or(InductorDevice.DefaultCoreFrequencyExponent, "core_frequency_exponent", string.Empty);
    public static readonly NumberKey CoreRipple = NumberKey.Or(InductorDevice.DefaultCoreRippleExponent, "core_ripple_exponent", string.Empty);
}

/// <summary>The numbers of the control.</summary>
internal static class ControlNumbers
{
    public static readonly NumberKey Fixed = NumberKey.OrZero("fixed_watts", "watts");
    public static readonly NumberKey Cycle = NumberKey.OrZero("coulombs_per_cycle", "coulombs");
}

/// <summary>The numbers of a corner.</summary>
internal static class CornerNumbers
{
    public static readonly NumberKey Resistance = NumberKey.Or(1, "resistance_factor", string.Empty);
    public static readonly NumberKey Capacitance = NumberKey.Or(1, "capacitance_factor", string.Empty);
    public static readonly NumberKey Threshold = NumberKey.Or(1, "threshold_factor", string.Empty);
}
