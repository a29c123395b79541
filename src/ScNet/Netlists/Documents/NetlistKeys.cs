namespace ScNet.Netlists.Documents;

/// <summary>The keys of the document.</summary>
internal static class NetlistKeys
{
    public const string Name = "name";
    public const string Input = "input";
    public const string Output = "output";
    public const string Load = "load";
    public const string Phases = "phases";
    public const string Count = "count";
    public const string Duty = "duty";
    public const string Names = "names";
    public const string Capacitors = "capacitors";
    public const string Switches = "switches";
    public const string Modes = "modes";
    public const string Between = "between";
    public const string Farads = "farads";
    public const string EsrOhms = "esr_ohms";
    public const string Ohms = "ohms";
    public const string On = "on";

    public static readonly string[] Root = [Name, Input, Output, Load, Phases, Capacitors, Switches, Modes];
    public static readonly string[] Phase = [Count, Duty, Names];
    public static readonly string[] Capacitor = [Between, Farads, EsrOhms];
    public static readonly string[] Switch = [Between, Ohms, On];
}
