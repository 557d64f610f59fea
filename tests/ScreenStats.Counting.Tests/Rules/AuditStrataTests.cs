using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Counting.Rules;

namespace ScreenStats.Counting.Tests.Rules;

public class AuditStrataTests
{
    private static readonly string[] Sites = ["North", "South"];
    private static readonly string[] Lots = ["A1", "B1", Levels.None];

    private static AuditStrata Of(string[] labels, params StratumSettings[] described) =>
        AuditStrata.Of(labels, Sites, Lots, new AuditSettings { Strata = [.. described] });

    [Theory]
    [InlineData(Levels.None)]
    [InlineData("random draw")]
    public void One_label_or_none_is_the_whole_program(string label)
    {
        var strata = Of([label, label]);
        strata.Names.Should().Equal(label);
        strata.Origins.Should().Equal(StratumOrigin.WholeProgram);
        strata.OfLabel(label).Should().Be(0);
        strata.OfRun("South", Levels.None, CollectedBy.NotRecorded).Should().Be((0, -1));
        strata.Unexplained.Should().Be(0);
    }

    [Fact]
    public void Labels_that_are_names_of_sites_or_of_lots_are_taken_as_those()
    {
        var sites = Of(["South"]);
        sites.Origins.Should().Equal(StratumOrigin.Site);
        sites.OfRun("South", "A1", CollectedBy.Self).Should().Be((0, -1));
        sites.OfRun("North", "A1", CollectedBy.Self).Should().Be((-1, -1));
        var lots = Of(["B1", "A1"]);
        lots.Names.Should().Equal("A1", "B1");
        lots.Origins.Should().Equal(StratumOrigin.Lot, StratumOrigin.Lot);
        lots.OfRun("South", Levels.None, CollectedBy.Self).Should().Be((-1, -1));
        lots.OfLabel("B1").Should().Be(1);
    }

    [Theory]
    [InlineData("North", "A1")]
    [InlineData("North", Levels.None)]
    [InlineData("A1", Levels.None)]
    [InlineData("North", "north")]
    public void Other_labels_are_explained_by_nothing(string first, string second)
    {
        var strata = Of([first, second]);
        strata.Origins.Should().Equal(StratumOrigin.Unexplained);
        strata.Unexplained.Should().Be(2);
        strata.OfLabel(second).Should().Be(0);
        strata.OfRun("South", "A1", CollectedBy.Self).Should().Be((0, -1));
    }

    [Fact]
    public void The_program_file_goes_before_names_and_must_describe_every_label()
    {
        StratumSettings[] described =
        [
            new() { Name = "North", Sites = ["S*"], Lots = ["A*"], Collection = CollectedBy.Self }, new() { Name = "x", Negatives = 40 }, new() { Name = "y", Lots = ["?1"], Sites = ["N?rth", "S*"] },
        ];
        var strata = Of(["x", "North"], described);
        strata.Names.Should().Equal("North", "x", "y");
        strata.Origins.Should().Equal(StratumOrigin.Patterns, StratumOrigin.StatedNumber, StratumOrigin.Patterns);
        (strata.Stated(0), strata.Stated(1)).Should().Be((null, 40L));
        strata.OfRun("South", "A1", CollectedBy.Self).Should().Be((0, 2));
        strata.OfRun("South", "A1", CollectedBy.Supervised).Should().Be((2, -1));
        strata.OfRun("South", Levels.None, CollectedBy.Self).Should().Be((-1, -1));
        Of(["x", "North", "z"], described).Unexplained.Should().Be(3);
        Of(["z"], described).Origins.Should().Equal(StratumOrigin.Unexplained);
        Of(["South"], described).Origins.Should().Equal(StratumOrigin.Site);
    }
}
