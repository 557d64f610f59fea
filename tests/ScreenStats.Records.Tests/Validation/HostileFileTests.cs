using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.Deidentification.Pseudonyms;

namespace ScreenStats.Records.Tests.Validation;

/// <summary>Files made to use up memory or time: one message, and neither is used up.</summary>
[Collection(nameof(Alone))]
public sealed class HostileFileTests
{
    public static TheoryData<string, string, string> Files => new()
    {
        { "a million nameless columns", new string(',', 1_000_000) + "\n" + new string(',', 1_000_000) + "\n", ReadingDiagnostics.TooManyColumns },
        { "a hundred thousand columns of different names", string.Join(',', Enumerable.Range(0, 100_000).Select(i => $"c{i}")) + "\np1\n", ReadingDiagnostics.TooManyColumns },
        { "sixteen thousand columns of the same name", string.Join(',', Enumerable.Repeat("person", 16_000)) + "\np1\n", ReadingDiagnostics.RepeatedHeading },
        { "a heading of a megabyte", new string('h', 1_000_000) + ",site\np1,x\n", ReadingDiagnostics.MissingColumn },
        { "a quoted field of a million lines", "person,site,collected_at,result\np1,\"" + string.Concat(Enumerable.Repeat("x\n", 1_000_000)), ReadingDiagnostics.UnclosedQuote },
    };

    [Theory]
    [MemberData(nameof(Files))]
    public void It_is_refused_soon_with_few_messages(string what, string text, string code)
    {
        using var folder = new TestFolder().With("screening.csv", text);
        var before = GC.GetTotalAllocatedBytes();

        var found = folder.Refused();

        found[0].Code.Should().Be(code, what);
        found.Should().HaveCountLessThan(20).And.OnlyContain(one => one.Message.Length < 1000);
        (GC.GetTotalAllocatedBytes() - before).Should().BeLessThan(400L << 20, what);
    }

    [Fact]
    public void A_row_of_a_million_fields_is_one_row_set_aside()
    {
        using var folder = new TestFolder().With("screening.csv", TestFolder.Headings + "p1,North,2026-01-05,neg\n" + new string('7', 1) + string.Concat(Enumerable.Repeat(",7", 500_000)) + "\np2,North,2026-01-05,neg\n");
        var reading = folder.Read();
        TestFolder.Rows(reading).Should().Be(3);
        reading.SetAside.Should().ContainSingle().Which.Code.Should().Be(ReadingDiagnostics.TooManyFields);
    }

    [Fact]
    public void Every_row_with_wide_unread_columns_is_looked_at_in_little_memory()
    {
        using var folder = new TestFolder().With("screening.csv",
            TestFolder.Headings.TrimEnd() + string.Concat(Enumerable.Range(0, 2_000).Select(i => $",extra{i}")) + "\n"
            + string.Concat(Enumerable.Range(0, 200).Select(i => $"p{i},North,2026-01-05,neg" + string.Concat(Enumerable.Repeat($",{i}", 2_000)) + "\n")));
        folder.Read().Diagnostics.Should().BeEmpty();
    }

    [Fact]
    public void Stopping_is_noticed_while_dates_are_settled_and_while_rows_are_counted()
    {
        using var folder = new TestFolder().With("screening.csv", TestFolder.Headings + string.Concat(Enumerable.Range(0, 50_000).Select(i => $"p{i},North,{1 + (i % 12)}/{13 + (i % 12)}/2026,neg\n")));
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        var read = () => folder.Read(options: new ReadOptions { Threads = 1, CancellationToken = stop.Token });
        read.Should().Throw<OperationCanceledException>();
    }

    [Fact]
    public void A_file_with_too_many_columns_is_not_pseudonymized()
    {
        using var folder = new TestFolder().With("a.csv", string.Join(',', Enumerable.Range(0, 20_000).Select(i => $"c{i}")) + "\np1\n")
            .With("key", Convert.FromHexString(Deidentification.Pseudonyms.PseudonymFolder.Key));
        Deidentification.Pseudonyms.PseudonymFolder.Private(Path.Combine(folder.Path, "key"));
        var act = () => Pseudonymizer.Write(new PseudonymizeRequest
        {
            Source = Path.Combine(folder.Path, "a.csv"), Target = Path.Combine(folder.Path, "b.csv"), KeyFile = Path.Combine(folder.Path, "key"), Columns = ["c7"],
        });
        act.Should().Throw<UnusableDataException>().Which.Diagnostics.Should().ContainSingle().Which.Code.Should().Be(ReadingDiagnostics.TooManyColumns);
        File.Exists(Path.Combine(folder.Path, "b.csv")).Should().BeFalse();
    }
}
