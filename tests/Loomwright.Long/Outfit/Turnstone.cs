namespace Loomwright.Long.Outfit;

/// <summary>Writes examples/turnstone: a sidecar outfit with two load controllers, made from a few tables, for scale. The same every time.</summary>
internal static class Turnstone
{
    public const string Path = "examples/turnstone/turnstone.loom.yaml";

    private const string Head = """
        # Turnstone: a sidecar outfit with two load controllers.
        #
        # An old 750 twin with a chair for two people and a dog. The bike has a box, the chair has a
        # box; what the hands do reaches both, over the plug at the front arm.
        #
        # Nobody wrote this file by hand: tests/Loomwright.Long/Outfit makes it (./long turnstone), to
        # have a design of this size. Change it there.

        loomwright: 1
        name: Turnstone
        notes: sidecar outfit, 750 cc twin, two load controllers
        ground: negative

        conditions:
          ambient: 25 C
          insulation: 105 C
          drop limit: 3 % both ways
          country: unset

        """;

    /// <summary>The whole file.</summary>
    public static string Text() => Sheet().Text(Head);

    private static Sheet Sheet()
    {
        var sheet = new Sheet();
        Places(sheet);
        Bike.Supply(sheet);
        Bike.Hands(sheet);
        Bike.Loads(sheet);
        Chair.Hands(sheet);
        Chair.Loads(sheet);
        return sheet;
    }

    private static void Places(Sheet sheet)
    {
        sheet.Place("bracket", 0, 0, "headlamp bracket");
        sheet.Place("yoke", 20, 0, "top yoke");
        sheet.Place("bars", 40, 0, "handlebar");
        sheet.Place("neck", 35, 0, "headstock");
        sheet.Place("engine", 85, 0, "engine");
        sheet.Place("arm", 85, 35, "front arm of the chair");
        sheet.Place("seat", 105, 0, "under the seat");
        sheet.Place("tray", 115, 0, "battery tray");
        sheet.Place("tail", 170, 0, "tail");
        sheet.Place("nose", 30, 80, "nose of the chair");
        sheet.Place("chair", 100, 80, "inside the chair");
        sheet.Place("boot", 170, 80, "boot of the chair");
        sheet.Plug("front plug", "neck");
        sheet.Plug("rear plug", "tail");
        sheet.Plug("arm plug", "arm");
        sheet.Plug("nose plug", "nose");
        sheet.Plug("boot plug", "boot");
        sheet.Plug("cabin plug", "chair");
    }
}
