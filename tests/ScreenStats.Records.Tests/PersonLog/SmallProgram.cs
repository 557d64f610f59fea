using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.PersonLog;
using ScreenStats.Records.PersonLog.Codes;
using ScreenStats.Records.PersonLog.Rows;
using ScreenStats.Records.PersonLog.Spilling;

namespace ScreenStats.Records.Tests.PersonLog;

/// <summary>A run as a person would write it down.</summary>
internal sealed record TestRun(
    string Person, DateTime Local, int Offset, bool DateOnly, string Site, string Lot, string Kit, string Operator, Outcome Outcome,
    Specimen Specimen, CollectedBy Collection, bool Symptomatic, bool Exposed, ControlExpectation? Control, DateOnly? Expiry, int? Minutes, string? Id,
    bool? Outbreak = null);

/// <summary>A confirmatory specimen as a person would write it down.</summary>
internal sealed record TestSpecimen(
    string Person, DateTime Local, int Offset, bool DateOnly, ConfirmatoryResult Result, SpecimenReason Reason, DateTime? Reported, bool ReportedDateOnly, string Stratum);

/// <summary>A whole small program, and how it is handed to the counter.</summary>
internal sealed record SmallProgram(ProgramSettings Settings, List<TestRun> Runs, List<TestSpecimen>? Specimens, StatedMoment? AsOf)
{
    private static readonly DateTime Epoch = new(2000, 1, 1);

    /// <summary>How many bits of the hash of a row's meaning differ: few bits nominate rows that do not mean the same.</summary>
    public int MeaningBits { get; init; } = 64;

    /// <summary>How many of the highest bits of the hash of a screen_id differ: few bits nominate rows with different ones.</summary>
    public int IdBits { get; init; } = 64;

    /// <summary>What rows may take in memory; null: memory is not bounded.</summary>
    public MemoryBudget? Budget { get; init; }

    public static long Seconds(DateTime local, int offset) => (long)(local - Epoch).TotalSeconds - (60L * offset);

    /// <summary>Counts it with the code under test.</summary>
    public CountedExports Count(int sinks = 1, int threads = 1, int batch = 3)
    {
        var vocabularies = new Vocabularies();
        var source = new RunSource(this, vocabularies);
        using var room = Budget is null ? null : new SpillRoom(Budget, new SpillFolder(), sinks);
        using var counter = new RunCounter(Settings, vocabularies) { Room = room };
        var takers = Enumerable.Range(0, sinks).Select(_ => counter.CreateSink()).ToArray();
        var at = 0;
        foreach (var rows in source.Rows.Chunk(batch)) takers[at++ % sinks].Take(rows);
        var specimens = Specimens?.Select((specimen, record) => Row(specimen, (uint)record, vocabularies)).ToList();
        return counter.Complete(specimens, source, Specimens is null ? null : new SpecimenSource(Specimens), AsOf, threads);
    }

    /// <summary>FNV-1a over the text, as good a hash as tests need.</summary>
    public static ulong Hash(object? value) =>
        (value?.ToString() ?? "").Aggregate(14695981039346656037ul, (hash, letter) => (hash ^ letter) * 1099511628211ul);

    private static SpecimenRow Row(TestSpecimen specimen, uint record, Vocabularies vocabularies) => new()
    {
        Person = Hash(specimen.Person),
        Instant = Seconds(specimen.Local, specimen.Offset),
        OffsetMinutes = (short)specimen.Offset,
        DateOnly = specimen.DateOnly,
        Record = record,
        Result = specimen.Result,
        Reason = specimen.Reason,
        Reported = specimen.Reported is { } reported ? Seconds(reported, specimen.Offset) : null,
        ReportedDateOnly = specimen.ReportedDateOnly,
        Stratum = vocabularies.Strata.Code(specimen.Stratum),
        Meaning = Hash(specimen),
    };

    private sealed class SpecimenSource(List<TestSpecimen> specimens) : IRowSource
    {
        public RowPlace Place(uint record) => new("confirmatory.csv", record + 2);

        public RunRow Read(uint record) => throw new NotSupportedException();

        public bool MeanTheSame(uint first, uint second) => specimens[(int)first] == specimens[(int)second];

        public bool HaveOneScreenId(uint first, uint second) => throw new NotSupportedException();
    }

    private sealed class RunSource : IRowSource
    {
        private readonly SmallProgram program;

        public RunSource(SmallProgram program, Vocabularies vocabularies)
        {
            this.program = program;
            Rows = [.. program.Runs.Select((run, record) => Row(run, (uint)record, vocabularies))];
        }

        public RunRow[] Rows { get; }

        public RowPlace Place(uint record) => new("screening.csv", record + 2);

        public RunRow Read(uint record) => Rows[record];

        public bool MeanTheSame(uint first, uint second)
        {
            first.Should().BeLessThan(second);
            return program.Runs[(int)first] == program.Runs[(int)second];
        }

        public bool HaveOneScreenId(uint first, uint second) => program.Runs[(int)first].Id == program.Runs[(int)second].Id;

        private RunRow Row(TestRun run, uint record, Vocabularies vocabularies) => new()
        {
            Person = run.Person.Length == 0 ? 0 : Hash(run.Person),
            Instant = Seconds(run.Local, run.Offset),
            OffsetMinutes = (short)run.Offset,
            DateOnly = run.DateOnly,
            Record = record,
            Site = vocabularies.Sites.Code(run.Site),
            Lot = vocabularies.Lots.Code(run.Lot),
            Kit = vocabularies.Kits.Code(run.Kit),
            Operator = vocabularies.Operators.Code(run.Operator),
            Outcome = run.Outcome,
            Specimen = run.Specimen,
            Collection = run.Collection,
            Symptomatic = run.Symptomatic,
            Exposed = run.Exposed,
            Outbreak = run.Outbreak switch { null => OutbreakMark.NotRecorded, false => OutbreakMark.No, _ => OutbreakMark.Yes },
            Control = run.Control,
            LotExpiry = run.Expiry,
            MinutesToReading = run.Minutes,
            HasScreenId = run.Id is not null,
            ScreenId = run.Id is null ? 0 : Hash(run.Id) >> (64 - program.IdBits) << (64 - program.IdBits),
            Meaning = program.MeaningBits == 64 ? Hash(run) : Hash(run) & ((1ul << program.MeaningBits) - 1),
        };
    }
}
