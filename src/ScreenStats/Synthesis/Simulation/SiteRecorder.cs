using ScreenStats.Counting.Cubes;
using ScreenStats.Synthesis.Planning;

namespace ScreenStats.Synthesis.Simulation;

/// <summary>Keeps what one site writes down, with the dirt of real exports, and counts what is true of it.</summary>
internal sealed class SiteRecorder
{
    private readonly SynthesisDirt dirt;
    private readonly SynthesisSite site;
    private readonly RandomStream random;
    private readonly ScreeningWriter screening;
    private readonly ControlsWriter controls;
    private readonly List<ConfirmatorySpecimen> specimens;
    private readonly TruthCounts truth;
    private readonly RunNumbers numbers;
    private readonly bool hasIdentifier;
    private readonly int lastReport;
    private readonly List<ScreeningRow> again = [];

    public SiteRecorder(
        SynthesisPlan plan, int index, ulong seed, ScreeningWriter screening, ControlsWriter controls,
        List<ConfirmatorySpecimen> specimens, TruthCounts truth, RunNumbers numbers)
    {
        (this.screening, this.controls, this.specimens, this.truth, this.numbers) = (screening, controls, specimens, truth, numbers);
        dirt = plan.Dirt;
        site = plan.Sites[index];
        random = new RandomStream(seed, 2, (ulong)index);
        hasIdentifier = plan.ScreeningColumns.Contains("screen_id");
        lastReport = (7 * plan.Weeks * Calendar.MinutesPerDay) - 1;
    }

    /// <summary>Writes a run.</summary>
    public void Record(ref ScreeningRow row)
    {
        if (row.Control is not null && !site.ControlsAmongScreens)
        {
            controls.Write(row);
            return;
        }

        row.Identifier = numbers.Next();
        if (row.Control is null) row.Faults = Faults();
        screening.Write(row);
        truth.Row(row);
        if (row.Control is not null || (row.Faults & RowFaults.SetAside) != 0) return;
        if (random.Chance(dirt.Duplicates))
        {
            again.Add(row);
        }
        else if (hasIdentifier && random.Chance(dirt.Conflicts))
        {
            row.Outcome = row.Outcome == Outcome.Invalid ? Outcome.Negative : Outcome.Invalid;
            screening.Write(row);
            truth.Conflict();
        }
    }

    /// <summary>Keeps a specimen that is reported before the program's data end.</summary>
    public void Record(in ConfirmatorySpecimen specimen)
    {
        if (specimen.Reported <= lastReport) specimens.Add(specimen);
    }

    /// <summary>Ends the day: rows that were entered twice are entered again.</summary>
    public void EndDay()
    {
        foreach (var row in again)
        {
            screening.Write(row);
            truth.Duplicate();
        }

        again.Clear();
    }

    private RowFaults Faults()
    {
        var faults = RowFaults.None;
        if (random.Chance(dirt.UnreadableDates)) faults |= RowFaults.UnreadableDate;
        if (random.Chance(dirt.UnknownWords)) faults |= RowFaults.UnknownWord;
        if (random.Chance(dirt.BlankResults)) faults |= RowFaults.BlankResult;
        if (random.Chance(site.LotMissingShare) || random.Chance(dirt.MissingLots)) faults |= RowFaults.NoLot;
        if (random.Chance(dirt.MissingKits)) faults |= RowFaults.NoKit;
        if (random.Chance(dirt.MissingOperators)) faults |= RowFaults.NoOperator;
        if (random.Chance(dirt.BlankSymptoms)) faults |= RowFaults.BlankSymptoms;
        if (random.Chance(dirt.UnreadableReadTimes)) faults |= RowFaults.UnreadableReadTime;
        if (random.Chance(dirt.Capitals)) faults |= RowFaults.Capitals;
        return faults;
    }
}
