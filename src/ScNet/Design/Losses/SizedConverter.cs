using ScNet.Devices;

namespace ScNet.Design.Losses;

/// <summary>A converter with what each of its elements is made of.</summary>
public sealed class SizedConverter
{
    /// <summary>Puts devices to the elements.</summary>
    /// <param name="converter">The converter; its on-resistances, capacitances and windings are the ones of the devices.</param>
    /// <param name="switches">The stacks, one per switch, in order.</param>
    /// <param name="capacitors">The stacks, one per capacitor, in order.</param>
    /// <param name="inductors">The parts, one per inductor, in order; null where the converter has none.</param>
    /// <param name="process">What drives and runs it.</param>
    /// <exception cref="ArgumentException">A list is not as long as the converter's.</exception>
    public SizedConverter(
        Converter converter,
        IReadOnlyList<StackedSwitch> switches,
        IReadOnlyList<StackedCapacitor> capacitors,
        IReadOnlyList<InductorDevice>? inductors,
        Process process)
    {
        ArgumentNullException.ThrowIfNull(converter);
        ArgumentNullException.ThrowIfNull(process);
        Converter = converter;
        Process = process;
        Switches = Named(switches, converter.Switches.Names, nameof(switches));
        Capacitors = Named(capacitors, converter.Capacitors.Names, nameof(capacitors));
        Inductors = Named(inductors ?? [], converter.Inductors.Names, nameof(inductors));
    }

    /// <summary>The converter with its sizes.</summary>
    public Converter Converter { get; }

    /// <summary>What drives and runs it.</summary>
    public Process Process { get; }

    /// <summary>What each switch is made of.</summary>
    public NamedList<StackedSwitch> Switches { get; }

    /// <summary>What each capacitor is made of.</summary>
    public NamedList<StackedCapacitor> Capacitors { get; }

    /// <summary>What each inductor is.</summary>
    public NamedList<InductorDevice> Inductors { get; }

    /// <summary>The area of all elements in square metres (m²).</summary>
    public double AreaSquareMetres =>
        Switches.Sum(s => s.AreaSquareMetres) + Capacitors.Sum(c => c.AreaSquareMetres) + Inductors.Sum(l => l.AreaSquareMetres);

    /// <summary>The same devices in a converter of the same elements, such as one with other phases; it takes over the values.</summary>
    /// <param name="other">The converter, whose elements have the same names in the same order.</param>
    /// <exception cref="ArgumentException">The elements are others.</exception>
    public SizedConverter Of(Converter other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return ElementNames(other).SequenceEqual(ElementNames(Converter))
            ? new(
                other.WithValues(
                    [.. Converter.Capacitors.Select(c => c.Farads)], [.. Converter.Switches.Select(s => s.Ohms)], [.. Converter.Capacitors.Select(c => c.EsrOhms)],
                    [.. Converter.Inductors.Select(l => l.Henries)], [.. Converter.Inductors.Select(l => l.Ohms)]),
                Switches, Capacitors, Inductors, Process)
            : throw new ArgumentException($"Expected a converter of the elements of '{Converter.Name}', but got '{other.Name}' with others.", nameof(other));
    }

    /// <summary>The converter without parasitic capacitances, which count by formula.</summary>
    internal Converter Plain => Converter.ParasiticBranches.Count == 0
        ? Converter
        : Converter.WithParasitics([.. Converter.Capacitors.Select(_ => CapacitorPlates.None)], []);

    /// <summary>The converter and its area.</summary>
    public override string ToString() => FormattableString.Invariant($"{Converter.Name}, {AreaSquareMetres * 1e6:G4} mm²");

    private static IEnumerable<string> ElementNames(Converter converter) =>
        [.. converter.Switches.Select(s => s.Name), .. converter.Capacitors.Select(c => c.Name), .. converter.Inductors.Select(l => l.Name)];

    private static NamedList<T> Named<T>(IReadOnlyList<T> items, NameIndex names, string parameterName) => Guard.Copy(items, parameterName).Count == names.Count
        ? new NamedList<T>([.. items], names)
        : throw new ArgumentException($"Expected {names.Count} devices, one per element, but got {items.Count}.", parameterName);
}
