using System.Collections.Immutable;
using ScreenStats.Counting.Programs.Cadence;
using ScreenStats.Evaluation.Cadence.Inputs;
using ScreenStats.Evaluation.Cadence.Rows;

namespace ScreenStats.Evaluation.Cadence.Options;

/// <summary>The ways of screening that are compared, the least frequent first, and what was done.</summary>
internal sealed class OptionList
{
    private const double SameRate = 1e-9;

    private readonly Dictionary<ScreeningOption, ScreeningOption> onScreen = new(ReferenceEqualityComparer.Instance);

    private OptionList(ImmutableArray<ScreeningOption> options, ScreeningOption? asDone, ScreeningOption? planned, IReadOnlyDictionary<ScreeningOption, CadenceOptionSettings> waiting)
    {
        Options = options;
        foreach (var option in options)
        {
            if (waiting.TryGetValue(option, out var settings)) onScreen.Add(option, new ScreeningOption(settings) { LeavesOnScreen = true });
        }

        AsDone = asDone;
        Planned = planned;
    }

    /// <summary>The options to choose from.</summary>
    public ImmutableArray<ScreeningOption> Options { get; }

    /// <summary>What was done, with the real gaps; null where nobody was tested twice.</summary>
    public ScreeningOption? AsDone { get; }

    /// <summary>What the program set out to do, one of the options; null where not stated, or where every site has a plan of its own.</summary>
    public ScreeningOption? Planned { get; }

    /// <summary>Options and what was done.</summary>
    public IEnumerable<ScreeningOption> All => AsDone is null ? Options : Options.Append(AsDone);

    /// <summary>These, and where people wait for confirmation each of the options with people who leave on the screen.</summary>
    public IEnumerable<ScreeningOption> Computed => All.Concat(Options.Where(onScreen.ContainsKey).Select(option => onScreen[option]));

    /// <summary>The same way of screening with people who leave on the screen: itself where they do anyway.</summary>
    public ScreeningOption OnScreen(ScreeningOption option) => onScreen.GetValueOrDefault(option, option);

    /// <summary>The option nearest to what was done; null where that is not known.</summary>
    public ScreeningOption? NearestToDone => AsDone is null ? null
        : Options.Where(option => !option.IsNone).OrderBy(option => Math.Abs(Math.Log(option.ScreensPerDay / AsDone.ScreensPerDay))).FirstOrDefault();

    public static OptionList Of(CadenceSettings settings, KnownFigures known)
    {
        var stated = new Dictionary<ScreeningOption, CadenceOptionSettings>(ReferenceEqualityComparer.Instance);
        ScreeningOption Stated(CadenceOptionSettings option)
        {
            var made = new ScreeningOption(option);
            if (settings.IsolateOn == IsolateOn.Confirmation && !made.IsNone) stated.Add(made, option);
            return made;
        }

        var all = settings.Options.Select(Stated).ToList();
        // Where every site has a plan of its own, the one for all others holds nowhere.
        var plan = known.Data.Sites.IsEmpty || known.Data.Sites.Any(site => !settings.PlannedAt.Any(one => one.Holds(site.Site))) ? settings.Planned : null;
        var planned = plan is null ? null : all.Find(option => option.Name == plan.Name);
        // A plan that is not among the options is one more of them.
        if (plan is not null && planned is null)
        {
            planned = Stated(plan);
            var at = all.FindIndex(option => option.ScreensPerDay > planned.ScreensPerDay + SameRate);
            all.Insert(at < 0 ? all.Count : at, planned);
        }

        var done = known.Data.PersonDays == 0 ? null : new ScreeningOption(known.ObservedGaps, known.Data.SiteGaps.Select(site => ((double)site.PersonDays, site.Gaps)));
        return new OptionList([.. all], done, planned, stated);
    }

    /// <summary>The options as findings.</summary>
    /// <param name="chosen">The one that the rule chooses; null where it chooses none.</param>
    public ImmutableArray<CadenceOptionFinding> Findings(ScreeningOption? chosen)
    {
        var leads = Leading(chosen);
        return
        [
            .. All.Select(option => new CadenceOptionFinding
            {
                Option = option.Name,
                EveryDays = option.EveryDays,
                EveryDaysUndefined = option.IsNone ? "nobody is screened" : null,
                Weekdays = string.Join(", ", option.Weekdays),
                ScreensPerDay = option.ScreensPerDay,
                IsNone = option.IsNone,
                IsAsDone = option == AsDone,
                IsPlanned = option == Planned,
                IsChosen = option == chosen,
                Leads = option == leads,
            }),
        ];
    }

    /// <summary>The option that is spoken of first: chosen, else planned, else nearest to what was done, else the most frequent.</summary>
    public ScreeningOption? Leading(ScreeningOption? chosen) => chosen ?? Planned ?? NearestToDone ?? Options.LastOrDefault(option => !option.IsNone);
}
