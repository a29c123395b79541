using Fractions;
using ScNet.Devices;
using ScNet.Netlists.Toml;
using Tomlyn.Syntax;

namespace ScNet.Design.Requirements.Toml;

/// <summary>Fills a requirement from the tree of a document.</summary>
internal sealed class RequirementDocument
{
    private const string LoadExample = "tables such as [[loads]]";
    private const string CurveExample = "an array of pairs of charge left and volts, such as [[1.0, 4.2], [0.0, 2.8]],";

    private readonly DiagnosticList _findings;
    private readonly RequirementTable _root;
    private readonly bool _isComplete;

    private RequirementDocument(TomlDocument document, DiagnosticList findings)
    {
        _findings = findings;
        _isComplete = document.IsComplete;
        _root = new RequirementTable(document.Root, TableShape.Root, "the document", findings, document.IsComplete);
    }

    /// <summary>Reads a document; null where something is wrong with it, all of which was reported.</summary>
    public static Requirement? Read(TomlDocument document, DiagnosticList findings) => new RequirementDocument(document, findings).Read();

    private Requirement? Read()
    {
        string? name = _root.Text(RequirementKeys.Name, "Give the requirement a name: name = \"Core\".");
        Interval<double> input = Range(RequirementKeys.Input, "volts", "Give the smallest and the largest input voltage: input_volts = [2.8, 4.2].");
        IReadOnlyList<DischargePoint> discharge = ReadDischarge(input);
        (IReadOnlyList<double> outputs, bool isRange) = ReadOutputs();
        Interval<double> frequency = Range(RequirementKeys.Frequency, "hertz", "Give its floor and its ceiling: frequency_hertz = [1e5, 1e8].");
        Interval<double> loadRange = _root.Range(RequirementKeys.LoadRange, "amperes");
        IReadOnlyList<LoadShare> loads = ReadLoads(loadRange, outputs, isRange);
        ReadAreas();
        Process? process = ReadProcess();
        IReadOnlyList<CandidateRequest> candidates = ReadCandidates();
        return _findings.HasErrors || name is null || process is null ? null : new Requirement
        {
            Name = name,
            InputVolts = input,
            Discharge = discharge,
            CellCoulombs = _root.Find(RootNumbers.Cell),
            SourceOhms = _root[RootNumbers.SourceOhms],
            OutputVolts = outputs,
            OutputIsRange = isRange,
            Loads = loads,
            LoadRangeAmperes = loadRange,
            RippleVolts = _root.Find(RootNumbers.Ripple),
            OutputFarads = _root[RootNumbers.OutputFarads],
            Process = process,
            AreaSquareMetres = _root.Find(RootNumbers.Area),
            CapacitorAreaSquareMetres = _root.Find(RootNumbers.CapacitorArea),
            SwitchAreaSquareMetres = _root.Find(RootNumbers.SwitchArea),
            FrequencyHz = frequency,
            Candidates = candidates,
        };
    }

    private Interval<double> Range(string key, string unit, string advice)
    {
        if (!_root.Has(key))
        {
            _root.Missing(key, advice);
        }

        return _root.Range(key, unit);
    }

    private DischargePoint[] ReadDischarge(Interval<double> input)
    {
        if (_root.Pairs(RequirementKeys.Discharge, CurveExample) is not { } pairs)
        {
            return [];
        }

        DischargePoint[] curve = [.. pairs.Select(p => new DischargePoint(p.First, p.Second))];
        Report(RequirementKeys.Discharge, pairs.Count == 0
            ? new RuleFault(DiagnosticCodes.WrongValue, -1, $"Expected {CurveExample} but got an empty array.")
            : RequirementRules.Discharge(curve, input), i => pairs[i].Position);
        return curve;
    }

    private (IReadOnlyList<double> Volts, bool IsRange) ReadOutputs()
    {
        bool isRange = _root.Has(RequirementKeys.OutputRange), hasValues = _root.Has(RequirementKeys.Output);
        if (isRange && hasValues)
        {
            _root.Report(DiagnosticCodes.WrongValue, "Expected values or a range of the output, but got both. Leave one out.", _root.PositionOf(RequirementKeys.OutputRange));
            return ([], false);
        }

        if (!isRange && !hasValues)
        {
            _root.Missing(RequirementKeys.Output, "Give the output voltages, output_volts = [0.8, 1.0], or their range, output_range_volts = [0.8, 1.0].");
            return ([], false);
        }

        string key = isRange ? RequirementKeys.OutputRange : RequirementKeys.Output;
        if (_root.Positives(key, "volts") is not { } volts)
        {
            return ([], false);
        }

        var array = _root.Entry(key)!.Value as ArraySyntax;
        Report(key, RequirementRules.Outputs(volts, isRange), i => array?.Items.GetChild(i)?.Value is { } item ? TomlValues.PositionOf(item, _findings) : _root.PositionOf(key));
        return (volts, isRange);
    }

    private IReadOnlyList<LoadShare> ReadLoads(Interval<double> range, IReadOnlyList<double> outputs, bool isRange)
    {
        if (!_root.Has(RequirementKeys.Loads))
        {
            if (!_root.Has(RequirementKeys.LoadRange))
            {
                _root.Missing(RequirementKeys.Loads, "Say what the load draws: [[loads]] with name, amperes and share of the time, or load_range_amperes = [1e-6, 1e-2].");
            }

            return range.IsDetermined ? DefaultLoads.Of(range) : [];
        }

        List<RequirementTable> tables = _root.Tables(RequirementKeys.Loads, TableShape.Load, "load", LoadExample) ?? [];
        List<LoadShare> loads = [];
        foreach (RequirementTable table in tables)
        {
            string? name = table.Text(RequirementKeys.Name, "Name this state of the load: name = \"sleep\".");
            if (name is not null && table.IsSound)
            {
                loads.Add(new LoadShare(name, table[LoadNumbers.Amperes], table[LoadNumbers.Share], table.Find(LoadNumbers.Output)));
            }
        }

        if (loads.Count == tables.Count && loads.Count > 0)
        {
            Report(RequirementKeys.Loads, RequirementRules.Shares(loads), i => tables[i].PositionOf(RequirementKeys.Name));
            Report(RequirementKeys.Loads, RequirementRules.Currents(loads, range), i => tables[i].PositionOf(LoadNumbers.Amperes.Key));
            Report(RequirementKeys.Loads, RequirementRules.OutputsOfLoads(loads, outputs, isRange), i => tables[i].PositionOf(LoadNumbers.Output.Key));
        }

        return loads;
    }

    private void ReadAreas()
    {
        bool hasCapacitors = _root.Has(RootNumbers.CapacitorArea.Key), hasSwitches = _root.Has(RootNumbers.SwitchArea.Key);
        if (!_root.Has(RootNumbers.Area.Key) && !(hasCapacitors && hasSwitches))
        {
            _root.Missing(
                hasCapacitors ? RootNumbers.SwitchArea.Key : hasSwitches ? RootNumbers.CapacitorArea.Key : RootNumbers.Area.Key,
                "Give the area of all, area_square_metres = 1e-6, or capacitor_area_square_metres and switch_area_square_metres.");
        }

        Report(RootNumbers.Area.Key, RequirementRules.Areas(
            _root.Find(RootNumbers.Area), _root.Find(RootNumbers.CapacitorArea), _root.Find(RootNumbers.SwitchArea)), _ => default);
    }

    private Process? ReadProcess()
    {
        if (_root.Table(RequirementKeys.Process, TableShape.Process) is { } table)
        {
            return new ProcessTables(table).Read();
        }

        if (!_root.Has(RequirementKeys.Process))
        {
            _root.Missing(RequirementKeys.Process, "Say what a converter can be made of: [process] with tables of switches and capacitors.");
        }

        return null;
    }

    private IReadOnlyList<CandidateRequest> ReadCandidates()
    {
        if (_root.Entry(RequirementKeys.Candidates) is not { } entry
            || (entry.Value is StringValueSyntax all && TomlValues.TextOf(all, _findings) == RequirementKeys.All))
        {
            return [];
        }

        return [.. (_root.Tables(RequirementKeys.Candidates, TableShape.Candidate, "candidate", "\"all\", or tables such as [[candidates]]") ?? [])
            .Select(CandidateOf).OfType<CandidateRequest>()];
    }

    private static CandidateRequest? CandidateOf(RequirementTable table)
    {
        string[] kinds = [.. new[] { RequirementKeys.File, RequirementKeys.Family, RequirementKeys.Families }.Where(table.Has)];
        if (kinds.Length == 0)
        {
            table.Missing(RequirementKeys.File, "Name a netlist, file = \"half.toml\", or a family, family = \"ladder\".");
        }
        else if (kinds.Length > 1)
        {
            table.Report(DiagnosticCodes.WrongValue, $"Expected one of '{RequirementKeys.File}', '{RequirementKeys.Family}' and '{RequirementKeys.Families}', but got {Quoted.List(kinds)}. Write a candidate for each.", table.PositionOf(kinds[1]));
        }

        string? file = table.Text(RequirementKeys.File), family = table.Text(RequirementKeys.Family);
        IReadOnlyList<string> families = family is null ? table.Texts(RequirementKeys.Families, "an array of families such as [\"ladder\", \"dickson\"]") : [family];
        Interval<int> sizes = table.WholeRange(RequirementKeys.Sizes);
        IReadOnlyList<Fraction> ratios = table.Exacts(RequirementKeys.Ratios, "an array of ratios such as [\"1/2\", \"1/3\"]");
        bool areGears = table.Flag(RequirementKeys.Gears);
        if (table.Has(RequirementKeys.File)
            && Array.Find([RequirementKeys.Sizes, RequirementKeys.Ratios, RequirementKeys.Gears], table.Has) is { } key)
        {
            table.Report(DiagnosticCodes.WrongValue, $"Expected '{key}' with families only, but got it with a file. Leave it out.", table.PositionOf(key));
        }

        return table.IsSound
            ? new CandidateRequest { File = file, Families = families, Sizes = sizes, Ratios = ratios, AreGears = areGears, Position = table.Position }
            : null;
    }

    // what parts left out because of syntax errors would put right is no fault
    private void Report(string key, RuleFault? fault, Func<int, SourcePosition> positionOf)
    {
        if (_isComplete && fault is { } broken)
        {
            _root.Report(broken.Code, broken.Message, broken.Index < 0 ? _root.PositionOf(key) : positionOf(broken.Index));
        }
    }
}
