namespace ScreenStats.Synthesis.Simulation;

/// <summary>All sites of a program, day by day, into its exports.</summary>
internal sealed class ProgramSimulation
{
    private const uint PseudonymMask = (1u << 24) - 1;
    private readonly SynthesisPlan plan;
    private readonly ulong seed;
    private readonly Stream screeningStream;

    public ProgramSimulation(SynthesisPlan plan, ulong seed, Stream screeningStream) =>
        (this.plan, this.seed, this.screeningStream) = (plan, seed, screeningStream);

    /// <summary>Stops the work between two days.</summary>
    public CancellationToken Cancelled { get; init; }

    public SynthesisTruth Run(Stream confirmatoryStream, Stream controlsStream, Stream headcountStream)
    {
        var days = 7 * plan.Weeks;
        var calendar = new Calendar(plan.FirstDay, days);
        var truth = new TruthCounts(plan.Sites.Length, plan.Lots.Length);
        var specimens = new List<ConfirmatorySpecimen>();
        using (var screening = new ScreeningWriter(plan, calendar, screeningStream))
        using (var controls = new ControlsWriter(plan, calendar, controlsStream))
        {
            var sites = Sites(screening, controls, specimens, truth);
            for (var day = 0; day < days; day++)
            {
                Cancelled.ThrowIfCancellationRequested();
                foreach (var site in sites) site.RunDay(day);
            }

            truth.People = sites.Sum(site => site.Seen);
            truth.Infected = sites.Sum(site => site.Infected);
        }

        ConfirmatoryWriter.Write(plan, calendar, specimens, new RandomStream(seed, 3, 0), truth, confirmatoryStream);
        if (plan.Enrolment is { } enrolment) WriteHeadcount(enrolment, headcountStream);
        return truth.Freeze(plan, seed);
    }

    /// <summary>A pseudonym that is another for every person (each step is one to one on 24 bits) and shows no order.</summary>
    private uint Pseudonym(int number)
    {
        var mixed = (uint)number & PseudonymMask;
        var key = seed;
        for (var round = 0; round < 4; round++)
        {
            mixed = ((mixed * 0x9E3779) + (uint)RandomStream.SplitMix(ref key)) & PseudonymMask;
            mixed ^= mixed >> 11;
        }

        return mixed;
    }

    private List<SiteSimulation> Sites(
        ScreeningWriter screening, ControlsWriter controls, List<ConfirmatorySpecimen> specimens, TruthCounts truth)
    {
        var sites = new List<SiteSimulation>();
        var numbers = new RunNumbers();
        var firstOperator = 1;
        var firstPerson = 0;
        for (var index = 0; index < plan.Sites.Length; index++)
        {
            var site = plan.Sites[index];
            uint[] codes = [.. Enumerable.Range(firstPerson, site.People).Select(Pseudonym)];
            var recorder = new SiteRecorder(plan, index, seed, screening, controls, specimens, truth, numbers);
            sites.Add(new SiteSimulation(plan, index, seed, codes, firstOperator, recorder));
            firstOperator += site.Operators;
            firstPerson += site.People;
        }

        return sites;
    }

    private void WriteHeadcount(double enrolment, Stream target)
    {
        var random = new RandomStream(seed, 4, 0);
        using var writer = new ExportWriter(target, plan.Dirt.CarriageReturns.Contains("headcount"), plan.Dirt.ByteOrderMarks.Contains("headcount"));
        writer.Append("site,week,eligible"u8);
        writer.EndRow();
        for (var week = 0; week < plan.Weeks; week++)
        {
            foreach (var site in plan.Sites)
            {
                writer.Add(ExportWriter.Field(site.Name));
                writer.Add(ExportWriter.Field(Dates.Week(plan.FirstDay.AddDays(7 * week))));
                writer.Next();
                writer.Number((long)Math.Ceiling(site.People / enrolment) + random.Below(3), 1);
                writer.EndRow();
            }
        }
    }
}
