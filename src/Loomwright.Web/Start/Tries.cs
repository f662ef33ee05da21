namespace Loomwright.Web.Start;

/// <summary>Counts what one address does within a while.</summary>
internal sealed class Tries(int most, TimeSpan within)
{
    private const int MostAddresses = 1000;

    private readonly Lock _gate = new();
    private readonly Dictionary<string, int> _counts = new(StringComparer.Ordinal);
    private long _since = Environment.TickCount64;

    /// <summary>Counts one more; false when that is too many.</summary>
    public bool Another(string who)
    {
        lock (_gate)
        {
            Forget();
            var count = _counts.GetValueOrDefault(who) + 1;
            if (_counts.Count < MostAddresses || _counts.ContainsKey(who))
            {
                _counts[who] = count;
            }

            return count <= most;
        }
    }

    /// <summary>Whether the address has had as many as it may.</summary>
    public bool IsOver(string who)
    {
        lock (_gate)
        {
            Forget();
            return _counts.GetValueOrDefault(who) >= most;
        }
    }

    private void Forget()
    {
        if (Environment.TickCount64 - _since > within.TotalMilliseconds)
        {
            _counts.Clear();
            _since = Environment.TickCount64;
        }
    }
}
