using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using ScNet.Search.Shards;

namespace ScNet.Cli.Commands;

/// <summary>The number of phases of searched networks, and how many capacitors go with it.</summary>
internal static class PhaseOptions
{
    /// <summary>The option; the capacitors of the command are checked with it.</summary>
    /// <param name="command">The command, to which it is added.</param>
    /// <param name="capacitors">Its number of capacitors.</param>
    /// <param name="description">What the number is of.</param>
    public static Option<int> AddTo(Command command, Option<int> capacitors, string description)
    {
        Option<int> phases = NumberOptions.Whole("--phases", description, 2, 3, 2);
        command.Options.Add(phases);
        command.Validators.Add(result =>
        {
            int most = AtlasShard.MostCapacitors(3);
            if (AreThree(result, phases) && Given(result, capacitors) is { } count && count > most)
            {
                result.AddError(FormattableString.Invariant($"Expected at most {most} after --capacitors with --phases 3, but got {count}."));
            }
        });
        return phases;
    }

    /// <summary>Whether three phases are asked for.</summary>
    public static bool AreThree(CommandResult result, Option<int> phases) => Given(result, phases) == 3;

    // a wrong value is told by its own option
    private static int? Given(CommandResult result, Option<int> option) =>
        result.GetResult(option)?.Tokens is [.., { } last] && int.TryParse(last.Value, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int value) ? value : null;
}
