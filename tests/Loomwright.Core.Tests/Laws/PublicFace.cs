using System.Reflection;
using System.Xml.Linq;
using Loomwright.Design;
using PublicApiGenerator;

namespace Loomwright.Tests.Laws;

public class PublicFace
{
    private static readonly Assembly Core = typeof(Loom).Assembly;

    [Fact]
    public void The_public_surface_is_the_accepted_one() =>
        Golden.Check("public-surface.txt", Core.GeneratePublicApi(new ApiGeneratorOptions { IncludeAssemblyAttributes = false }) + "\n");

    [Fact]
    public void Every_public_type_says_what_it_is()
    {
        var docs = XDocument.Load(Path.ChangeExtension(Core.Location, ".xml"));
        var documented = docs.Descendants("member")
            .Where(m => m.Element("summary")?.Value.Trim().Length > 0)
            .Select(m => m.Attribute("name")!.Value)
            .ToHashSet(StringComparer.Ordinal);
        var silent = Core.GetExportedTypes().Select(t => "T:" + t.FullName!.Replace('+', '.')).Where(n => !documented.Contains(n)).Order(StringComparer.Ordinal);
        Assert.Empty(silent);
    }

    [Fact]
    public void Public_records_never_change_after_they_are_made()
    {
        var changeable = Core.GetExportedTypes()
            .Where(t => t.GetMethod("<Clone>$") is not null)
            .SelectMany(t => t.GetProperties(BindingFlags.Public | BindingFlags.Instance))
            .Where(p => p.SetMethod is { IsPublic: true } set && !set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(System.Runtime.CompilerServices.IsExternalInit)))
            .Select(p => $"{p.DeclaringType}.{p.Name}")
            .Order(StringComparer.Ordinal);
        Assert.Empty(changeable);
    }
}
