using ScNet.Tests.Numerics;

namespace ScNet.Tests.SteadyState.Precise;

/// <summary>The values of a converter's elements in numbers of 640 binary places, every one of which can be moved a little.</summary>
internal sealed class PreciseValues
{
    private PreciseValues(Converter converter)
    {
        Farads = [.. converter.Capacitors.Select(c => (BigReal)c.Farads)];
        EsrOhms = [.. converter.Capacitors.Select(c => (BigReal)c.EsrOhms)];
        BottomFarads = [.. converter.Capacitors.Select(c => (BigReal)c.Plates.BottomFarads)];
        TopFarads = [.. converter.Capacitors.Select(c => (BigReal)c.Plates.TopFarads)];
        ParasiticFarads = [.. converter.Parasitics.Select(p => (BigReal)p.Farads)];
        OnOhms = [.. converter.Switches.Select(s => (BigReal)s.Ohms)];
        Henries = [.. converter.Inductors.Select(l => (BigReal)l.Henries)];
        WindingOhms = [.. converter.Inductors.Select(l => (BigReal)l.Ohms)];
        Duties = [.. converter.Phases.Select(p => BigReal.Of(p.Duty))];
    }

    public BigReal[] Farads { get; }

    public BigReal[] EsrOhms { get; }

    public BigReal[] BottomFarads { get; }

    public BigReal[] TopFarads { get; }

    public BigReal[] ParasiticFarads { get; }

    public BigReal[] OnOhms { get; }

    public BigReal[] Henries { get; }

    public BigReal[] WindingOhms { get; }

    public BigReal[] Duties { get; }

    public static PreciseValues Of(Converter converter) => new(converter);
}
