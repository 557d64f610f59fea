using System.Globalization;
using System.Text;
using CsCheck;
using ScreenStats.Counting.Programs;
using ScreenStats.Testing;

namespace ScreenStats.Records.Tests.Cache;

/// <summary>Reading with a cache gives what reading without one gives, to the last sign, and does not read what it knows.</summary>
public class CacheEqualityTests
{
    private const string Headings = "screen_id,person,site,collected_at,result,lot,kit,operator,lot_expiry,read_at,symptomatic,control,note\n";

    public static TheoryData<string> Corpus =>
        [.. Directory.EnumerateFiles(RepositoryRoot.Combine("tests", "ScreenStats.Records.Tests", "Corpus"), "expected.json", SearchOption.AllDirectories).Select(file => Path.GetFileName(Path.GetDirectoryName(file)!)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Corpus))]
    public void Every_export_of_the_corpus_is_read_the_same(string name)
    {
        using var program = Of(RepositoryRoot.Combine("tests", "ScreenStats.Records.Tests", "Corpus", name));
        program.Same();
        var plain = program.Plain(text: true);
        program.Cached(out _, text: true).Should().Be(plain, "the text of rows set aside is looked up where it is asked for");
    }

    [Fact]
    public void The_sample_program_is_read_the_same_and_the_second_time_not_split()
    {
        using var program = Of(RepositoryRoot.Combine("sample-data", "marrowlight"));
        var small = new[] { "controls.csv", "headcount.csv", "sites.csv" }.Sum(file => new FileInfo(Path.Combine(program.Folder.Path, file)).Length);
        program.Cached(out var first).Should().Be(program.Plain());
        first!.BytesSplit.Should().BeGreaterThan(2_000_000);
        foreach (var threads in new[] { 1, 2, 5 })
        {
            program.Cached(out var second, threads).Should().Be(program.Plain(threads));
            second!.Cache.Should().BeEquivalentTo(new CacheUse(2, 2, []));
            second.BytesSplit.Should().BeInRange(1, small, "only the small exports are read");
        }
    }

    [Fact]
    public void A_daily_run_splits_only_what_is_new()
    {
        using var program = new CachedProgram();
        for (var week = 1; week <= 4; week++) program.Folder.With(FormattableString.Invariant($"screening-{week}.csv"), Week(week, 4_000));
        program.Same();
        var added = Week(5, 3_000);
        program.Folder.With("screening-3b.csv", added);
        program.Cached(out var daily).Should().Be(program.Plain(), "a file in the middle moves the records of all behind it");
        daily!.Cache.Should().BeEquivalentTo(new CacheUse(5, 4, []));
        daily.BytesSplit.Should().BeLessThanOrEqualTo(Encoding.UTF8.GetByteCount(added));

        program.Folder.With("screening-1.csv", Week(1, 4_000).Replace(",neg,", ",pos,", StringComparison.Ordinal));
        program.Cached(out var changed).Should().Be(program.Plain(), "a changed file of the same length is read anew");
        changed!.Cache!.FromCache.Should().Be(4);

        File.Move(Path.Combine(program.Folder.Path, "screening-2.csv"), Path.Combine(program.Folder.Path, "screening-9.csv"));
        program.Cached(out var renamed).Should().Be(program.Plain(), "the content counts, not the name");
        renamed!.Cache!.FromCache.Should().Be(5);

        File.Delete(Path.Combine(program.Folder.Path, "screening-4.csv"));
        program.Cached(out var fewer).Should().Be(program.Plain());
        fewer!.Cache.Should().BeEquivalentTo(new CacheUse(4, 4, []));

        File.Copy(Path.Combine(program.Folder.Path, "screening-9.csv"), Path.Combine(program.Folder.Path, "screening-9-again.csv"));
        program.Cached(out var twice).Should().Be(program.Plain(), "rows that are there twice are duplicates, as they are without a cache");
        twice!.Cache!.FromCache.Should().Be(5);
        twice.SetAside.Count(row => row.Code == "duplicate").Should().BeGreaterThan(3_000);
    }

    [Fact]
    public void Bounded_memory_and_a_cache_go_together()
    {
        using var program = new CachedProgram();
        for (var week = 1; week <= 3; week++) program.Folder.With(FormattableString.Invariant($"screening-{week}.csv"), Week(week, 3_000));
        program.Same();
        program.Cached(out var bounded, options: new ReadOptions { Memory = ReadOptions.LeastMemory }).Should().Be(program.Plain());
        bounded!.Cache!.FromCache.Should().Be(3);
    }

    [Fact]
    public void Whatever_the_program_file_says_of_rows_makes_them_new_and_what_it_says_of_counting_does_not()
    {
        using var program = new CachedProgram();
        program.Folder.With("screening.csv", Week(1, 500)).With("confirmatory.csv", "person,collected_at,result\np-0001,2026-01-05T12:00,pos\np-0002,2026-01-06T12:00,odd\n");
        program.Same();
        var first = program.Settings;
        var exports = first.Exports;

        foreach (var settings in new[]
        {
            first with { TimeZone = "Europe/Vienna" },
            first with { TimeZone = "America/New_York" },
            first with { Exports = exports with { Screening = exports.Screening with { Words = exports.Screening.Words.Add("what", "negative") } } },
            first with { Exports = exports with { Screening = exports.Screening with { Words = exports.Screening.Words.Add("what", "positive") } } },
            first with { Exports = exports with { Screening = exports.Screening with { Columns = exports.Screening.Columns.Add("site", "note") } } },
            first with { Exports = exports with { Screening = exports.Screening with { TwoDigitYears = true } } },
            first with { Exports = exports with { Screening = exports.Screening with { DateOrder = DateOrder.DayFirst } } },
        })
        {
            program.Settings = settings;
            var plain = program.Plain();
            program.Cached(out var read).Should().Be(plain);
            read?.BytesSplit.Should().BeGreaterThan(10_000, "rows are understood otherwise");
            program.Cached(out read).Should().Be(plain);
            if (read is not null) read.BytesSplit.Should().Be(0);
        }

        program.Settings = first;
        program.Same("again");
        program.Settings = ProgramFile.Parse("""{ "policy": { "confirmWithinHours": 24, "isolationDays": 5 }, "screens": [ { "name": "D", "lots": ["L*"], "sensitivity": "6/9", "specificity": "2391/2400", "source": "a study", "readWindowMinutes": [10, 20], "runsPerKit": 10 } ], "report": { "period": "month" } }""");
        program.Cached(out var counted).Should().Be(program.Plain());
        counted!.BytesSplit.Should().Be(0, "rows are understood as before, and counted anew in every run");
    }

    [Fact]
    public void Dates_whose_order_the_whole_export_settles_are_read_anew_when_it_settles_otherwise()
    {
        using var program = new CachedProgram();
        program.Folder.With("screening-1.csv", "person,site,collected_at,result\np1,A,05/01/2026,neg\np2,A,06/01/2026,pos\n")
            .With("screening-2.csv", "person,site,collected_at,result\np1,A,13/01/2026,neg\n");
        program.Same("day-first").Should().NotBeNull();
        program.Folder.With("screening-2.csv", "person,site,collected_at,result\np1,A,01/13/2026,neg\n");
        program.Cached(out var otherwise).Should().Be(program.Plain());
        otherwise!.Cache!.FromCache.Should().Be(0, "the first file is read by another order now");
        program.Cached(out var known).Should().Be(program.Plain());
        known!.Cache!.FromCache.Should().Be(2);
        program.Folder.With("screening-3.csv", "person,site,collected_at,result\np1,A,13/01/2026,neg\n");
        program.Cached(out var refused).Should().Be(program.Plain(), "both orders in one column are refused");
        refused.Should().BeNull();
    }

    [Fact]
    public void Names_that_only_rows_set_aside_hold_are_not_in_the_cache_and_still_counted_where_another_file_counts_them()
    {
        using var program = new CachedProgram();
        program.Folder.With("screening-1.csv", "person,site,collected_at,result,lot,kit\np1,Elsewhere,soon,neg,Quince7,Mirth7\np1,North,2026-01-05,odd word of two,L1,K1\np1,North,2026-01-05,neg,L1,K1\n")
            .With("screening-2.csv", "person,site,collected_at,result,lot,kit\np2,Elsewhere,2026-01-05,neg,Quince7,K1\n");
        var read = program.Same()!;
        read.Understanding[0].Columns.Single(column => column.Column == "lot").Levels.Single(level => level.Name == "Quince7").Rows.Should().Be(2);
        File.Delete(Path.Combine(program.Folder.Path, "screening-2.csv"));
        Directory.Delete(program.Place, recursive: true);
        program.Same();
        var bytes = string.Concat(program.Entries.Select(entry => Encoding.Latin1.GetString(File.ReadAllBytes(entry))));
        bytes.Should().Contain("North", "names of counted rows are needed");
        bytes.Should().NotContain("Quince").And.NotContain("Mirth").And.NotContain("Elsewhere").And.NotContain("soon").And.NotContain("p1");
    }

    [Fact]
    public void Any_cells_behind_good_headings_are_read_the_same()
    {
        var pieces = new[] { "p1", "p2", "North", "South", "2026-01-05T08:00", "2026-01-05T08:10+01:00", "2026-01-06", "05/01/2026", "13/01/2026", "neg", "pos", "inv", "", "x", "\"a,b\"", "\"c\nd\"", "K1", "Total", "2027-01" };
        var row = Gen.Int[0, pieces.Length - 1].Select(piece => pieces[piece]).Array[0, 14].Select(cells => string.Join(",", cells));
        var good = Gen.Select(Gen.Int[1, 3], Gen.Int[0, 3], Gen.Int[0, 3], (person, day, result) =>
            string.Create(CultureInfo.InvariantCulture, $",p{person},North,2026-01-0{day + 1}T08:00,{(result == 0 ? "pos" : "neg")},L{person},K{day},o{result},,,,,"));
        var file = Gen.OneOf(row, good, good, good).Array[1, 15].Select(rows => Headings + string.Join("\n", rows) + "\n");
        var specimens = Gen.OneOf(row, Gen.Select(Gen.Int[1, 3], Gen.Int[1, 4], (person, day) => string.Create(CultureInfo.InvariantCulture, $"p{person},2026-01-0{day}T12:00,pos,2026-01-09,,audit,S{day}")))
            .Array[1, 6].Select(rows => "person,collected_at,result,reported_at,method,reason,sampling_stratum\n" + string.Join("\n", rows) + "\n");
        Gen.Select(file.Array[1, 3], specimens).Sample((files, confirmatory) =>
        {
            using var program = new CachedProgram();
            program.Folder.With("confirmatory.csv", confirmatory);
            for (var at = 0; at < files.Length; at++) program.Folder.With(FormattableString.Invariant($"screening-{at}.csv"), files[at]);
            program.Same();
        }, iter: 200);
    }

    [Theory]
    [InlineData("utf-8")]
    [InlineData("utf-16")]
    [InlineData("windows-1252")]
    public void Files_of_several_blocks_are_read_the_same_in_every_encoding_and_by_any_threads(string encoding)
    {
        using var program = new CachedProgram();
        var text = Week(1, 12_000).Replace("Site 2", "Sité 2", StringComparison.Ordinal);
        var bytes = encoding switch
        {
            "utf-16" => [0xFF, 0xFE, .. Encoding.Unicode.GetBytes(text)],
            "windows-1252" => Encoding.Latin1.GetBytes(text),
            _ => Encoding.UTF8.GetBytes(text),
        };
        program.Folder.With("screening.csv", bytes);
        program.Same(encoding, threads: 1)!.BytesSplit.Should().Be(0);
        program.Cached(out _, threads: 4).Should().Be(program.Plain(threads: 3));
        Directory.Delete(program.Place, recursive: true);
        program.Same(encoding, threads: 4)!.BytesSplit.Should().Be(0);
    }

    private static CachedProgram Of(string folder)
    {
        var program = new CachedProgram();
        foreach (var path in Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories))
        {
            var to = Path.Combine(program.Folder.Path, Path.GetRelativePath(folder, path));
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Copy(path, to);
        }

        var settings = Path.Combine(folder, "program.json");
        if (File.Exists(settings)) program.Settings = ProgramFile.Parse(File.ReadAllText(settings));
        return program;
    }

    internal static string Week(int week, int rows)
    {
        var text = new StringBuilder(Headings);
        for (var i = 0; i < rows; i++)
        {
            var result = (i % 17) switch { 3 => "pos", 9 => "Invalid", 12 => "what", _ => "neg" };
            var date = i % 101 == 7 ? "soon" : FormattableString.Invariant($"2026-0{week}-{1 + (i % 28):00}T{6 + (i % 12):00}:{i % 60:00}:00");
            var id = i % 113 == 50 ? i - 1 : i;
            text.Append(CultureInfo.InvariantCulture, $"s{week}-{id},p-{i % 997:x4},\"Site {i % 5}\",{date},{result},L{i % 7},K{week}-{i / 25},op-{i % 11},{(i % 3 == 0 ? "2027-01" : "2025-12-31")},{(i % 5 == 0 ? "" : date)},{(i % 50 == 0 ? "yes" : "")},{(i % 90 == 0 ? "negative" : "")},{(i % 71 == 0 ? "\"two\nlines\"" : "")}\n");
        }

        return text.ToString();
    }
}
