using System.Collections.Immutable;

namespace Loomwright.Bench;

/// <summary>Says each caution the first time it matters and not again.</summary>
internal sealed class Once
{
    private readonly HashSet<string> _said = new(StringComparer.Ordinal);

    public ImmutableArray<string> Say(params ReadOnlySpan<string> cautions)
    {
        var now = ImmutableArray.CreateBuilder<string>();
        foreach (var caution in cautions)
        {
            if (_said.Add(caution))
            {
                now.Add(caution);
            }
        }

        return now.ToImmutable();
    }
}
