using System.ComponentModel;
using Spectre.Console.Cli;

namespace Loomwright.Verbs;

/// <summary>What every verb that reads a design takes.</summary>
public class FileSettings : CommandSettings
{
    [CommandArgument(0, "<FILE>")]
    [Description("The design, a file that ends in .loom.yaml")]
    public string File { get; init; } = "";

    [CommandOption("--json")]
    [Description("Answer for a machine to read")]
    public bool Json { get; init; }
}
