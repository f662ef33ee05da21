using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using Loomwright.Drawing;

namespace Loomwright.Web.Picture;

/// <summary>The sheets of the bikes being looked at. Arranging one takes seconds, so each is drawn once.</summary>
public sealed class Drawer
{
    private readonly ConditionalWeakTable<Bike, ConcurrentDictionary<SheetName, Lazy<Task<string>>>> _drawn = [];

    /// <summary>One of the bike's sheets as SVG.</summary>
    public Task<string> Draw(Bike bike, SheetName sheet) => _drawn.GetOrCreateValue(bike)
        .GetOrAdd(sheet, name => new(() => Task.Run(() => Svg.Write(bike.Sheet(name.Kind, name.Of)!)))).Value;
}
