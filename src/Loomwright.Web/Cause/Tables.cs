using System.Runtime.CompilerServices;
using Loomwright.Diagnosis;

namespace Loomwright.Web.Cause;

/// <summary>What every mistake looks like, worked out once for each state of a file that is looked at, for as long as somebody waits for it.</summary>
internal static class Tables
{
    private static readonly ConditionalWeakTable<Bike, Work> Known = [];

    /// <summary>The table of a bike; seconds when it is first asked.</summary>
    /// <exception cref="OperationCanceledException">It was stopped before it was done.</exception>
    public static async Task<TroubleTable> Of(Bike bike, CancellationToken stop)
    {
        Work work;
        lock (Known)
        {
            if (!Known.TryGetValue(bike, out work!) || work.Stop.IsCancellationRequested)
            {
                Known.AddOrUpdate(bike, work = Work.On(bike));
            }

            work.Waiting++;
        }

        try
        {
            return await work.Table.WaitAsync(stop);
        }
        finally
        {
            lock (Known)
            {
                if (--work.Waiting == 0 && !work.Table.IsCompleted)
                {
                    work.Stop.Cancel();
                }
            }
        }
    }

    private sealed record Work(Task<TroubleTable> Table, CancellationTokenSource Stop)
    {
        public int Waiting { get; set; }

        public static Work On(Bike bike)
        {
            var stop = new CancellationTokenSource();
            return new(Task.Run(() => bike.Trouble(stop: stop.Token)), stop);
        }
    }
}
