using Fractions;

namespace ScNet.Design.Choice;

/// <summary>Flying capacitors that a controller keeps at even steps of the input, where neither averages nor ripple do.</summary>
internal static class ControlledSteps
{
    /// <summary>The stage with the shares (n - 1 - k)/(n - 1) of fly k for n levels, stated as what a controller holds.</summary>
    public static Converter Of(Converter stage, int levels)
    {
        int cells = levels - 1;
        if (stage.Capacitors.Count % 2 == 0)
        {
            return stage;
        }

        ConverterBuilder builder = Converter.Create(stage.Name).Input(stage.InputNode).Output(stage.OutputNode).Duties([.. stage.Phases.Select(p => p.Duty)]);
        builder.AddElements(stage, string.Empty, node => node, c => new Fraction(cells - 1 - c, cells));
        return builder.Mode(Mode.DefaultName, [.. stage.Entries(stage.Modes[0], string.Empty, p => [p])]).Build();
    }
}
