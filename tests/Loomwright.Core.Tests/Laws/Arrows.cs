using Loomwright.Design;
using Mono.Cecil;
using Mono.Cecil.Rocks;

namespace Loomwright.Tests.Laws;

public class Arrows
{
    private static readonly Dictionary<string, string[]> Table = ReadTable();

    [Fact]
    public void A_folder_of_the_core_uses_only_what_the_table_in_ARCHITECTURE_allows()
    {
        var allowed = Table.Keys.ToDictionary(f => f, Reach, StringComparer.Ordinal);
        var breaches = References()
            .Where(r => r.From != r.To && r.From.Length > 0 && !(allowed.TryGetValue(r.From, out var reach) && reach.Contains(r.To)))
            .Select(r => $"{r.From} → {r.To} ({r.Type})")
            .Distinct(StringComparer.Ordinal)
            .Order(StringComparer.Ordinal);
        Assert.Empty(breaches);
    }

    [Fact]
    public void Every_folder_of_the_core_stands_in_the_table_and_no_row_is_left_over()
    {
        var folders = Directory.GetDirectories(Path.Combine(Repository.Root, "src/Loomwright.Core"))
            .Select(d => Path.GetFileName(d)!)
            .Where(d => d is not ("bin" or "obj"));
        Assert.Equal(folders.Order(StringComparer.Ordinal), Table.Keys.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_arrows_form_no_circle() => Assert.All(Table.Keys, folder => Assert.DoesNotContain(folder, Table[folder].SelectMany(Reach)));

    private static HashSet<string> Reach(string folder)
    {
        var reach = new HashSet<string>(StringComparer.Ordinal);
        var todo = new Stack<string>([folder]);
        while (todo.TryPop(out var at))
        {
            if (reach.Add(at))
            {
                foreach (var next in Table[at])
                {
                    todo.Push(next);
                }
            }
        }

        return reach;
    }

    private static Dictionary<string, string[]> ReadTable()
    {
        var lines = Repository.Read("ARCHITECTURE.md").Split('\n');
        return lines
            .SkipWhile(l => !l.StartsWith("## Arrows", StringComparison.Ordinal))
            .Skip(1)
            .TakeWhile(l => !l.StartsWith("## ", StringComparison.Ordinal))
            .Where(l => l.StartsWith('|') && !l.StartsWith("|---", StringComparison.Ordinal) && !l.StartsWith("| folder", StringComparison.Ordinal))
            .Select(l => l.Split('|', StringSplitOptions.TrimEntries))
            .ToDictionary(c => c[1], c => c[2].Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries), StringComparer.Ordinal);
    }

    private static List<(string From, string To, string Type)> References()
    {
        using var assembly = AssemblyDefinition.ReadAssembly(typeof(Loom).Assembly.Location);
        var found = new List<(string, string, string)>();
        foreach (var type in assembly.MainModule.GetAllTypes())
        {
            foreach (var used in Used(type))
            {
                if (used.FullName.StartsWith("Loomwright.", StringComparison.Ordinal))
                {
                    found.Add((Folder(type), Folder(used), type.FullName + " uses " + used.FullName));
                }
            }
        }

        return found;
    }

    private static string Folder(TypeReference type)
    {
        while (type.DeclaringType is not null)
        {
            type = type.DeclaringType;
        }

        var parts = type.Namespace.Split('.');
        return parts.Length > 1 ? parts[1] : "";
    }

    private static IEnumerable<TypeReference> Used(TypeDefinition type)
    {
        var direct = new List<TypeReference>();
        if (type.BaseType is not null)
        {
            direct.Add(type.BaseType);
        }

        direct.AddRange(type.Interfaces.Select(i => i.InterfaceType));
        direct.AddRange(type.Fields.Select(f => f.FieldType));
        foreach (var method in type.Methods)
        {
            direct.Add(method.ReturnType);
            direct.AddRange(method.Parameters.Select(p => p.ParameterType));
            if (!method.HasBody)
            {
                continue;
            }

            direct.AddRange(method.Body.Variables.Select(v => v.VariableType));
            foreach (var instruction in method.Body.Instructions)
            {
                switch (instruction.Operand)
                {
                    case TypeReference t:
                        direct.Add(t);
                        break;
                    case MemberReference m when m.DeclaringType is not null:
                        direct.Add(m.DeclaringType);
                        break;
                }
            }
        }

        return direct.SelectMany(Flat);
    }

    private static IEnumerable<TypeReference> Flat(TypeReference type) => type switch
    {
        GenericInstanceType g => g.GenericArguments.SelectMany(Flat).Append(g.ElementType),
        TypeSpecification s => Flat(s.ElementType),
        _ => [type],
    };
}
