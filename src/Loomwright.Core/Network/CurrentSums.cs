namespace Loomwright.Network;

/// <summary>
/// The current leaving each node, summed with the rounding error carried along. A leak of nanoamps beside a hundred
/// amps decides where a floating part rests; a plain sum would lose it.
/// </summary>
internal sealed class CurrentSums(int nodes)
{
    private readonly (double Amps, double Error)[] _sums = new (double, double)[nodes];

    public double this[int node] => _sums[node].Amps + _sums[node].Error;

    public void Clear() => Array.Clear(_sums);

    public void Leave(int node, double amps)
    {
        ref var sum = ref _sums[node];
        var total = sum.Amps + amps;
        var back = total - sum.Amps;
        sum.Error += (sum.Amps - (total - back)) + (amps - back);
        sum.Amps = total;
    }
}
