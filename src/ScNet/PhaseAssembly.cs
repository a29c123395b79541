using Fractions;

namespace ScNet;

/// <summary>The phases of a declaration, and the phase that a number or a name means.</summary>
internal sealed class PhaseAssembly
{
    /// <summary>The most phases a converter may have.</summary>
    public const int MaximumCount = 1000;

    private static readonly Fraction s_dutyTolerance = new(1, 1_000_000_000);

    private readonly DiagnosticList _findings;
    private readonly Dictionary<string, int> _number = new(StringComparer.Ordinal);
    private readonly bool _known;

    public PhaseAssembly(NetlistDeclaration declaration, DiagnosticList findings)
    {
        _findings = findings;
        Declared<Declared<Fraction>[]>? duties = declaration.Duties;
        Declared<Declared<string>[]>? names = declaration.PhaseNames;
        long count = duties?.Value.Length ?? declaration.PhaseCount?.Value ?? names?.Value.Length ?? 2;
        _known = !declaration.Gaps.HasFlag(DeclarationGaps.Phases)
            && CheckCount(count, duties?.Position ?? declaration.PhaseCount?.Position ?? names?.Position);
        if (!_known)
        {
            return;
        }

        if (declaration.PhaseCount is { } declaredCount && declaredCount.Value != count)
        {
            _findings.Error(DiagnosticCodes.WrongValue, $"{declaredCount.Value} phases are declared, but {count} duties given. Leave one of the two out.", declaredCount.Position);
        }

        if (duties is { } given)
        {
            CheckDuties(given);
        }

        if (names is { } declaredNames && declaredNames.Value.Length != count)
        {
            _findings.Error(DiagnosticCodes.WrongValue, $"Expected {count} phase names, one per phase, but got {declaredNames.Value.Length}. Name every phase, or none.", declaredNames.Position);
            names = null;
            _known = false;
        }

        Phases = new Phase[count];
        for (int j = 0; j < count; j++)
        {
            Phases[j] = new Phase(j + 1, NameOf(names?.Value[j], j + 1), duties?.Value[j].Value ?? new Fraction(1, count));
        }
    }

    /// <summary>The phases in their order; empty where they are not known.</summary>
    public Phase[] Phases { get; } = [];

    /// <summary>The phases meant in the list of a switch, or of an inductor whose current ends them; what is not a phase is reported and left out.</summary>
    public PhaseSet Resolve(DeclaredPhase[] phases, string element, bool isInductor = false)
    {
        if (!_known || phases.Length == 0)
        {
            return PhaseSet.None;
        }

        string what = isInductor ? $"Inductor {Quoted.Name(element)} ends" : $"Switch {Quoted.Name(element)} is closed in";
        Span<int> numbers = phases.Length <= 64 ? stackalloc int[phases.Length] : new int[phases.Length];
        int count = 0;
        foreach (DeclaredPhase phase in phases)
        {
            long number = phase.Number;
            if (phase.Name is { } name)
            {
                number = _number.GetValueOrDefault(name);
                if (number == 0)
                {
                    FormattableString known = _number.Count > 0 ? (FormattableString)$"named {Quoted.List(_number.Keys)}" : $"not named";
                    _findings.Error(DiagnosticCodes.UnknownPhase, $"{what} phase {Quoted.Name(name)}, but the phases are {FormattableString.Invariant(known)}. Correct the name, or use numbers from 1 to {Phases.Length}.", phase.Position, [element]);
                    continue;
                }
            }
            else if (number < 1 || number > Phases.Length)
            {
                _findings.Error(DiagnosticCodes.UnknownPhase, $"{what} phase {number}, but the phases are numbered from 1 to {Phases.Length}. Correct the number, or declare more phases.", phase.Position, [element]);
                continue;
            }

            numbers[count++] = (int)number;
        }

        return PhaseSet.Of(numbers[..count]);
    }

    private bool CheckCount(long count, SourcePosition? position)
    {
        if (count < 2)
        {
            _findings.Error(DiagnosticCodes.TooFewPhases, $"Expected at least two phases, but got {count}. A converter moves charge by switching between phases.", position);
            return false;
        }

        if (count > MaximumCount)
        {
            _findings.Error(DiagnosticCodes.ValueOutOfRange, $"Expected at most {MaximumCount} phases, but got {count}.", position);
            return false;
        }

        return true;
    }

    private void CheckDuties(Declared<Declared<Fraction>[]> duties)
    {
        bool positive = true;
        Fraction sum = Fraction.Zero;
        for (int j = 0; j < duties.Value.Length; j++)
        {
            Declared<Fraction> duty = duties.Value[j];
            if (duty.Value.Denominator.IsZero || duty.Value.ToDouble() <= 0)
            {
                positive = false;
                _findings.Error(DiagnosticCodes.ValueOutOfRange, $"Expected a positive duty of phase {j + 1}, but got {duty.Value.ToDouble()}. Leave out a phase that takes no time.", duty.Position ?? duties.Position, phase: j + 1);
            }
            else
            {
                sum += duty.Value;
            }
        }

        // a duty that is wrong by itself spoils the sum too: one message for one mistake
        if (positive && (sum - Fraction.One).Abs() > s_dutyTolerance)
        {
            _findings.Error(DiagnosticCodes.DutySum, $"Expected duties that sum to 1 within 1e-9, but these sum to {sum.ToDouble()}. Correct one of them.", duties.Position);
        }
    }

    private string NameOf(Declared<string>? name, int number)
    {
        if (name is not { } declared)
        {
            return FormattableString.Invariant($"{number}");
        }

        if (string.IsNullOrEmpty(declared.Value) || !_number.TryAdd(declared.Value, number))
        {
            _findings.Error(DiagnosticCodes.DuplicateName, $"Phase {number} needs a name of its own, but got {Quoted.Name(declared.Value ?? string.Empty)}.", declared.Position, phase: number);
        }

        return declared.Value ?? string.Empty;
    }
}
