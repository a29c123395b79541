using System.Numerics;

namespace ScNet.Topologies;

/// <summary>The switches of a binary converter of one ratio, each with the phases in which it is closed.</summary>
internal sealed class BinaryStrings
{
    private readonly SortedDictionary<BinarySwitch, List<int>> _switches = [];

    private BinaryStrings()
    {
    }

    public IReadOnlyDictionary<BinarySwitch, List<int>> Switches => _switches;

    /// <summary>The strings of k/2^n; where k is even, those of the smaller denominator, in n + 1 phases all the same.</summary>
    public static BinaryStrings Of(int capacitors, int numerator)
    {
        int spare = BitOperations.TrailingZeroCount(numerator);
        int used = capacitors - spare;
        BinaryStrings strings = new();
        int phase = 0;
        foreach ((int[] digits, _) in BinaryCodes.Of(used, numerator >> spare))
        {
            strings.AddString(digits, ++phase);
        }

        for (int empty = phase + 1; empty <= capacitors + 1; empty++)
        {
            strings.RestAll(1, used, empty);
        }

        for (int any = 1; any <= capacitors + 1; any++)
        {
            strings.RestAll(used + 1, capacitors, any);
        }

        strings.HoldSpares(used, capacitors);
        return strings;
    }

    private void AddString(int[] digits, int phase)
    {
        int end = digits[0] == 1 ? BinarySwitch.High : BinarySwitch.Reference;
        for (int j = 1; j < digits.Length; j++)
        {
            if (digits[j] == 0)
            {
                Rest(j, phase);
                continue;
            }

            Close(end, BinarySwitch.Plate(j, positive: digits[j] < 0), phase);
            end = BinarySwitch.Plate(j, positive: digits[j] > 0);
        }

        Close(end, BinarySwitch.Low, phase);
    }

    // Once in a period, so that no charge goes round through them.
    private void HoldSpares(int used, int capacitors)
    {
        for (int j = used + 1; j <= capacitors; j++)
        {
            Close(BinarySwitch.Plate(j, positive: true), BinarySwitch.Low, capacitors + 1);
        }
    }

    private void RestAll(int first, int last, int phase)
    {
        for (int j = first; j <= last; j++)
        {
            Rest(j, phase);
        }
    }

    private void Rest(int capacitor, int phase) => Close(BinarySwitch.Plate(capacitor, positive: false), BinarySwitch.Reference, phase);

    private void Close(int place, int other, int phase)
    {
        BinarySwitch @switch = BinarySwitch.Between(place, other);
        if (!_switches.TryGetValue(@switch, out List<int>? phases))
        {
            _switches.Add(@switch, phases = []);
        }

        phases.Add(phase);
    }
}
