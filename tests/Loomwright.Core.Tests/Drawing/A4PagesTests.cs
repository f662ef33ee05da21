using System.Globalization;
using System.Xml.Linq;
using Loomwright.Drawing;

namespace Loomwright.Tests.Drawing;

public sealed class A4PagesTests
{
    private static readonly XNamespace Ns = "http://www.w3.org/2000/svg";

    [Theory]
    [InlineData("kittiwake/kittiwake")]
    [InlineData("sandpiper/sandpiper")]
    public void Pages_are_A4_at_full_size_and_between_them_show_all_of_the_sheet(string file)
    {
        var sheet = Bike.Read(new Loomwright.Text.SourceText(file, Repository.Read($"examples/{file}.loom.yaml"))).Overview();
        var pages = A4Pages.Of(sheet).Select(p => XDocument.Parse(p).Root!).ToList();
        Assert.All(pages, p => Assert.Equal(["210mm", "297mm"], new[] { (string)p.Attribute("width")!, (string)p.Attribute("height")! }.Order(StringComparer.Ordinal)));
        if (pages.Count == 1)
        {
            Assert.Equal("A4", sheet.Paper);
            return;
        }

        // One pixel of the sheet is one pixel of the page: 16 px stay 2.5 mm.
        var windows = pages.Select(p => p.Element(Ns + "svg")!).Select(w => (Box: Numbers(w, "viewBox"), Wide: Numbers(w, "width")[0], High: Numbers(w, "height")[0])).ToList();
        Assert.All(windows, w => Assert.Equal((w.Wide, w.High), (w.Box[2], w.Box[3])));
        const double Margin = 7 * 6.4;
        for (var x = Margin; x < sheet.Width - Margin; x += 20)
        {
            for (var y = Margin; y < sheet.Height - Margin; y += 20)
            {
                Assert.Contains(windows, w => x >= w.Box[0] && x <= w.Box[0] + w.Box[2] && y >= w.Box[1] && y <= w.Box[1] + w.Box[3]);
            }
        }
    }

    private static double[] Numbers(XElement element, string name) =>
        [.. ((string)element.Attribute(name)!).Split(' ').Select(n => double.Parse(n, CultureInfo.InvariantCulture))];
}
