using System.CommandLine;

namespace ScNet.Cli.Commands;

/// <summary><c>scnet completion</c>: a script that makes a shell complete commands, options and values.</summary>
internal static class CompletionCommand
{
    private static readonly (string Shell, string Script)[] s_scripts =
    [
        ("bash", """
            # Completion of scnet in bash. In ~/.bashrc: source <(scnet completion bash)
            _scnet() {
                local line
                COMPREPLY=()
                while IFS= read -r line; do
                    COMPREPLY+=("$(printf '%q' "$line")")
                done < <("${COMP_WORDS[0]}" complete -- "${COMP_WORDS[@]:1:COMP_CWORD}" 2>/dev/null)
            }
            complete -o default -F _scnet scnet
            """),
        ("zsh", """
            #compdef scnet
            # Completion of scnet in zsh. In ~/.zshrc, after compinit: source <(scnet completion zsh)
            _scnet() {
                local -a found
                found=("${(@f)$("${words[1]}" complete -- "${(@Q)words[2,CURRENT]}" 2>/dev/null)}")
                found=("${(@)found:#}")
                if (( ${#found} )); then
                    compadd -a found
                else
                    _files
                fi
            }
            compdef _scnet scnet
            """),
        ("fish", """
            # Completion of scnet in fish. In ~/.config/fish/config.fish: scnet completion fish | source
            function __scnet_complete
                set -l words (commandline -opc) (commandline -ct)
                $words[1] complete -- $words[2..-1] 2>/dev/null
            end
            complete -c scnet -a '(__scnet_complete)'
            """),
        ("powershell", """
            # Completion of scnet in PowerShell. In $PROFILE: scnet completion powershell | Out-String | Invoke-Expression
            Register-ArgumentCompleter -Native -CommandName scnet -ScriptBlock {
                param($wordToComplete, $commandAst, $cursorPosition)
                $words = @($commandAst.CommandElements | Select-Object -Skip 1 |
                    Where-Object { $_.Extent.EndOffset -lt $cursorPosition } | ForEach-Object { $_.ToString() }) + $wordToComplete
                scnet complete -- @words 2>$null | ForEach-Object {
                    $text = if ($_ -match '\s') { "'" + ($_ -replace "'", "''") + "'" } else { $_ }
                    [System.Management.Automation.CompletionResult]::new($text, $_, 'ParameterValue', $_)
                }
            }
            """),
    ];

    /// <summary>The shells for which there is a script.</summary>
    public static IEnumerable<string> Shells => s_scripts.Select(s => s.Shell);

    public static Command Create()
    {
        Argument<string> shell = new("SHELL") { Description = $"The shell: {string.Join(", ", Shells)}." };
        shell.Validators.Add(result =>
        {
            foreach (string other in result.Tokens.Select(t => t.Value).Where(t => !Shells.Contains(t)))
            {
                result.AddError($"Expected {string.Join(" or ", Shells)}, but got '{other}'.");
            }
        });
        shell.CompletionSources.Add([.. Shells]);
        Command command = new("completion", "A script that makes a shell complete commands, options and values; its first lines say how to load it.") { shell };
        command.SetAction(parsed =>
        {
            string name = parsed.GetRequiredValue(shell);
            parsed.InvocationConfiguration.Output.WriteLine(s_scripts.Single(s => s.Shell == name).Script.ReplaceLineEndings("\n"));
            return Tool.Success;
        });
        return command;
    }
}
