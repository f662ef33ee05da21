namespace Loomwright.Network;

/// <summary>
/// The current leaving each node, summed with the rounding error carried along. A leak of nanoamps beside a hundred
/// amps decides where a floating part rests; a plain sum would lose it.
/// </summary>
internal sealed class CurrentSums(int nodes)
{
    private readonly double[] _sum = new double[nodes];
    private readonly double[] _error = new double[nodes];

    public double this[int node] => _sum[node] + _error[node];

    public void Clear()
    {
        Array.Clear(_sum);
        Array.Clear(_error);
    }

    public void Leave(int node, double amps)
    {
        ref var sum = ref _sum[node];
        var total = sum + amps;
        var back = total - sum;
        _error[node] += (sum - (total - back)) + (amps - back);
        sum = total;
    }
}
