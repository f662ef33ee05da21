using System.Runtime.CompilerServices;
using Loomwright.Diagnosis;

namespace Loomwright.Web.Cause;

/// <summary>What every mistake looks like, worked out once for each state of a file that is looked at.</summary>
internal static class Tables
{
    private static readonly ConditionalWeakTable<Bike, Task<TroubleTable>> Known = [];

    /// <summary>The table of a bike; seconds when it is first asked.</summary>
    public static Task<TroubleTable> Of(Bike bike) => Known.GetValue(bike, b => Task.Run(() => b.Trouble()));
}
