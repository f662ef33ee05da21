using Loomwright.Design;

namespace Loomwright.Tests.ProjectFile;

public sealed class WireColoursTests
{
    // Letters of IEC 60757 and the older German ones: from memory.
    [Theory]
    [InlineData("GN/WH", "GN/WH")]
    [InlineData("GNWH", "GN/WH")]
    [InlineData("gn/ws", "GN/WH")]
    [InlineData("gnge", "GN/YE")]
    [InlineData("GNYE", "GN/YE")]
    [InlineData("RD", "RD")]
    [InlineData("rt", "RD")]
    [InlineData("RT / SW", "RD/BK")]
    [InlineData("sw", "BK")]
    [InlineData("br", "BN")]
    [InlineData("bl", "BU")]
    [InlineData("gr", "GY")]
    [InlineData("rs", "PK")]
    [InlineData("tk", "TQ")]
    public void Both_sets_of_letters_are_read(string written, string iec) => Assert.Equal(iec, WireColours.Read(written)?.ToString());

    [Fact]
    public void Both_letters_of_every_colour_of_the_table_are_the_same_colour() =>
        PublishedRows.Each("08-colour-codes.csv", PublishedTable.Read("08-colour-codes.csv").Rows, _ => true, allFromMemory: true, check: row =>
        {
            Assert.NotNull(WireColours.Read(row["iec60757"]));
            Assert.Equal(WireColours.Read(row["iec60757"]), WireColours.Read(row["german_letters"].Length > 0 ? row["german_letters"] : row["iec60757"]));
        });

    [Theory]
    [InlineData("green")]
    [InlineData("XX")]
    [InlineData("GN/")]
    [InlineData("GN/WH/RD")]
    [InlineData("")]
    public void Other_letters_are_no_colour(string written) => Assert.Null(WireColours.Read(written));

    [Theory]
    [InlineData("bl", true)]
    [InlineData("sw/gr", true)]
    [InlineData("gnbl", true)]
    [InlineData("BU", false)]
    [InlineData("GN", false)]
    public void German_blue_and_grey_are_told_from_black_and_green(string written, bool noted) => Assert.Equal(noted, WireColours.CouldBeMisread(written) is not null);

    [Fact]
    public void A_colour_word_suggests_its_code() => Assert.Equal("GN/WH", WireColours.Suggest("green/white"));
}
