using ScNet.Analysis;
using ScNet.Derivations.Expressions;
using ScNet.Netlists.Toml;
using ScNet.Topologies;

namespace ScNet.Derivations.Documents;

/// <summary>Makes a derivation of the tree of a document.</summary>
internal sealed class DerivationDocument
{
    // an unknown name is compared with each that there is
    private const int MostCompared = 1000;

    private readonly TomlDocument _document;
    private readonly DiagnosticList _findings;
    private readonly TomlValues _values;
    private readonly StatedValues _stated;
    private readonly TomlEntry? _netlist;
    private readonly TomlEntry? _family;

    public DerivationDocument(TomlDocument document, DiagnosticList findings)
    {
        (_document, _findings, _values) = (document, findings, new TomlValues(findings));
        _stated = new StatedValues(_values, findings);
        TomlKeys.Check(document.Root, DerivationKeys.Root, "the document", DerivationKeys.Format, findings);
        RequireVersion();
        _netlist = document.Root.Find(DerivationKeys.Netlist);
        _family = document.Root.Find(DerivationKeys.Family);
        Netlist = _netlist is null ? null : _values.Text(_netlist, _netlist.Value, "'netlist'")?.Value;
        Family = ReadFamily();
    }

    /// <summary>The netlist that it is about, as it is written; null where there is none, or it was reported.</summary>
    public string? Netlist { get; }

    /// <summary>The member of a family that it is about; null where there is none, or it was reported.</summary>
    public FamilyRequest? Family { get; }

    /// <summary>What it states of a converter; incomplete where something was reported.</summary>
    public Derivation? Of(Converter converter)
    {
        if (FindMode(converter) is not { } mode)
        {
            return null;
        }

        Derivation derivation;
        try
        {
            derivation = Derivation.Of(ModeAnalysis.Try(converter, mode));
        }
        catch (ScNetException refusal)
        {
            foreach (Diagnostic diagnostic in refusal.Diagnostics)
            {
                _findings.Error(diagnostic.Code, $"{diagnostic.Message}", (_netlist ?? _family)?.Position ?? _document.Root.Position, [.. diagnostic.Elements]);
            }

            return null;
        }

        derivation = WithTolerance(derivation);
        derivation = Find(DerivationKeys.Ratio) is { } ratio && _stated.One(ratio, ratio.Value, "the ratio", []) is { } value ? derivation.Ratio(value) : derivation;
        derivation = Add(derivation, Find(DerivationKeys.InputCharge), "the input charge", null, (d, phase, charge) => d.InputInPhase(phase, charge));
        derivation = Add(derivation, Find(DerivationKeys.OutputCharge), "the output charge", null, (d, phase, charge) => d.OutputInPhase(phase, charge));
        string[] capacitors = [.. converter.Capacitors.Select(c => c.Name)], switches = [.. converter.Switches.Select(s => s.Name)];
        foreach (TomlEntry entry in Elements(DerivationKeys.Charges, "capacitor or switch", [.. capacitors, .. switches]))
        {
            bool isCapacitor = converter.Capacitors.TryGet(entry.Key, out _);
            derivation = Add(derivation, entry, $"the charge of {Quoted.Name(entry.Key)}", entry.Key, (d, phase, charge) => isCapacitor
                ? d.CapacitorInPhase(entry.Key, phase, charge)
                : d.SwitchInPhase(entry.Key, phase, charge));
        }

        derivation = Whole(derivation, DerivationKeys.Voltages, "capacitor", capacitors, "voltage", (d, name, v) => d.CapacitorVoltage(name, v));
        foreach (TomlEntry entry in Elements(DerivationKeys.Blocking, "switch", switches))
        {
            derivation = Add(derivation, entry, $"the blocking voltage of {Quoted.Name(entry.Key)}", entry.Key, (d, phase, v) => d.BlockingInPhase(entry.Key, phase, v));
        }

        derivation = Whole(derivation, DerivationKeys.PeakBlocking, "switch", switches, "peak blocking voltage", (d, name, v) => d.PeakBlocking(name, v));
        derivation = Whole(derivation, DerivationKeys.SlowCoefficients, "capacitor", capacitors, "slow coefficient", (d, name, v) => d.SlowCoefficient(name, v));
        derivation = Whole(derivation, DerivationKeys.FastCoefficients, "switch or capacitor", [.. switches, .. capacitors], "fast coefficient", (d, name, v) => d.FastCoefficient(name, v));
        derivation = AddFormulas(derivation);
        if (_document.IsComplete && !_findings.HasErrors && derivation.Statements.Count + derivation.Forms.Count == 0)
        {
            _findings.Error(DiagnosticCodes.MissingKey, $"The document states nothing. Give at least one value: ratio = \"1/3\".", _document.Root.Position);
        }

        return derivation;
    }

    private void RequireVersion()
    {
        if (_document.IsComplete && Find(TomlDocument.VersionKey) is null)
        {
            _findings.Error(DiagnosticCodes.MissingKey, $"The document has no key '{TomlDocument.VersionKey}'. Name the version it is written for: {TomlDocument.VersionKey} = {DerivationReader.FormatVersion}.", _document.Root.Position);
        }
    }

    /// <summary>Reports that it names no netlist where none is given otherwise.</summary>
    public void RequireNetlist()
    {
        if (_netlist is null && _family is null && _document.IsComplete)
        {
            _findings.Error(
                DiagnosticCodes.MissingKey,
                $"The document has no key 'netlist'. Name the file of the converter, netlist = \"half.toml\", or a family, family = \"ladder 4\".",
                _document.Root.Position);
        }
    }

    private FamilyRequest? ReadFamily()
    {
        if (_family is null || _values.Text(_family, _family.Value, "'family'") is not { } text)
        {
            return null;
        }

        FamilyRequest? request = null;
        string? wrong = _netlist is null ? FamilyRequest.Read(text.Value, out request) : "Expected 'netlist' or 'family', but got both. Leave one out.";
        if (wrong is not null)
        {
            _findings.Error(DiagnosticCodes.WrongValue, $"{wrong}", _family.Position);
        }

        return request;
    }

    private Mode? FindMode(Converter converter)
    {
        if (Find(DerivationKeys.Mode) is not { } entry)
        {
            if (converter.Modes.Count == 1)
            {
                return converter.Modes[0];
            }

            _findings.Error(
                DiagnosticCodes.MissingKey, $"The document has no key 'mode', but {Quoted.Name(converter.Name)} has {converter.Modes.Count}: {Quoted.List([.. converter.Modes.Select(m => m.Name)])}. Name one: mode = \"{Quoted.Plain(converter.Modes[0].Name)}\".", _document.Root.Position);
            return null;
        }

        if (_values.Text(entry, entry.Value, "'mode'") is not { } name)
        {
            return null;
        }

        if (converter.Modes.TryGet(name.Value, out Mode? mode))
        {
            return mode;
        }

        _findings.Error(DiagnosticCodes.WrongValue, $"{Quoted.Name(converter.Name)} has no mode {Quoted.Name(name.Value)}. Its modes are {Quoted.List([.. converter.Modes.Select(m => m.Name)])}.", name.Position);
        return null;
    }

    private Derivation WithTolerance(Derivation derivation)
    {
        if (Find(DerivationKeys.Tolerance) is not { } entry)
        {
            return derivation;
        }

        if (!TomlValues.TryNumber(entry.Value, out double tolerance))
        {
            _values.WrongNumber(entry, entry.Value, "'tolerance'", string.Empty, null);
        }
        else if (tolerance is not (>= 0 and < 1))
        {
            _values.OutOfRange("a relative tolerance from 0 to below 1", entry.Value!, "'tolerance'", null);
        }
        else
        {
            return derivation.WithTolerance(tolerance);
        }

        return derivation;
    }

    private Derivation Whole(
        Derivation derivation, string table, string kind, string[] names, string what, Func<Derivation, string, StatedValue, Derivation> add)
    {
        foreach (TomlEntry entry in Elements(table, kind, names))
        {
            if (_stated.One(entry, entry.Value, $"the {what} of {Quoted.Name(entry.Key)}", [entry.Key]) is { } value)
            {
                derivation = add(derivation, entry.Key, value);
            }
        }

        return derivation;
    }

    private Derivation Add(Derivation derivation, TomlEntry? entry, string what, string? element, Func<Derivation, int, StatedValue, Derivation> add) =>
        entry is not null && _stated.ByPhase(entry, what, element is null ? [] : [element], derivation.Converter.Phases) is { } stated
            ? stated.Aggregate(derivation, (d, s) => add(d, s.Phase, s.Value))
            : derivation;

    // the entries of a table whose keys are names that there are
    private IEnumerable<TomlEntry> Elements(string table, string kind, string[] names)
    {
        HashSet<string> known = new(names, StringComparer.Ordinal);
        string[] compared = names.Length <= MostCompared ? names : [];
        foreach (TomlEntry entry in Table(table)?.Entries ?? [])
        {
            if (known.Contains(entry.Key))
            {
                yield return entry;
                continue;
            }

            string advice = NearestName.Of(entry.Key, compared) is { } nearest ? $"Did you mean {Quoted.Name(nearest)}?" : $"There are {Quoted.List(names)}.";
            _findings.Error(DiagnosticCodes.WrongValue, $"There is no {kind} {Quoted.Name(entry.Key)} for [{table}]. {advice}", entry.Position, [entry.Key]);
        }
    }

    private Derivation AddFormulas(Derivation derivation)
    {
        if (Table(DerivationKeys.Formulas) is not { } table)
        {
            return derivation;
        }

        TomlKeys.Check(table, DerivationKeys.FormulaKeys, "[formulas]", DerivationKeys.Format, _findings);
        foreach (TomlEntry entry in table.Entries.Where(e => Array.IndexOf(DerivationKeys.FormulaKeys, e.Key) >= 0))
        {
            if (_values.Text(entry, entry.Value, $"'{entry.Key}'") is not { } text)
            {
                continue;
            }

            if (!Expression.TryParse(text.Value, out Expression? formula, out string error))
            {
                _findings.Error(DiagnosticCodes.WrongValue, $"'{entry.Key}' is no formula. {error}", text.Position);
                continue;
            }

            try
            {
                derivation = entry.Key switch
                {
                    DerivationKeys.OutputVoltage => derivation.OutputVoltage(formula),
                    DerivationKeys.SlowLimit => derivation.SlowSwitchingLimit(formula),
                    DerivationKeys.FastLimit => derivation.FastSwitchingLimit(formula),
                    DerivationKeys.SlowLoss => derivation.SlowSwitchingLoss(formula),
                    _ => derivation.FastSwitchingLoss(formula),
                };
            }
            catch (ArgumentException unknown)
            {
                _findings.Error(DiagnosticCodes.WrongValue, $"'{entry.Key}' names what there is not. {Printable.Of(WordsOf(unknown))}", text.Position);
            }
        }

        return derivation;
    }

    // what an exception says, without the name of the parameter of the method
    private static string WordsOf(ArgumentException exception)
    {
        int end = exception.Message.LastIndexOf(" (Parameter", StringComparison.Ordinal);
        return end < 0 ? exception.Message : exception.Message[..end];
    }

    private TomlEntry? Find(string key) => _document.Root.Find(key);

    private TomlEntry? Table(string key)
    {
        TomlEntry? entry = Find(key);
        if (entry is { IsTable: false })
        {
            _values.Wrong($"a table [{key}]", entry, entry.Value, $"'{key}'");
            return null;
        }

        return entry;
    }
}
