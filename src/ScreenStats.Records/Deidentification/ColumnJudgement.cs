namespace ScreenStats.Records.Deidentification;

/// <summary>What a column's values, taken together, look like.</summary>
/// <param name="Identifier">The identifier of the Safe Harbor list; None where they look like nothing.</param>
/// <param name="What">What they look like, in words.</param>
/// <param name="Values">Different values that do.</param>
/// <param name="Of">Different values looked at.</param>
internal readonly record struct ColumnJudgement(SafeHarbor Identifier, string What, int Values, int Of)
{
    // Below so many different values a share says nothing: of 12 values 11 pass a check of one figure by chance once in 10^10.
    private const int FewestForCheckDigits = 12;
    private const int FewestForShares = 8;

    /// <summary>
    /// What only many values together can show; a person or operator column of this kind is refused:
    /// <list type="bullet">
    /// <item>check digits: at least 12 different values and four in five of them have the form of a rule, and nine in ten of those pass it;</item>
    /// <item>given or family names of one word: at least half of the values are one word, and three or more of those are among the names
    /// that are frequent in several languages: one in ten of them, or one in two where there are fewer than eight;</item>
    /// <item>dates of birth: at least eight different values, four in five of them dates of 1920 to 2012.</item>
    /// </list>
    /// </summary>
    public static ColumnJudgement OfMany(ValueSample sample)
    {
        var all = sample.Count;
        var traits = sample.Traits;
        for (var rule = 0; rule < CheckDigits.Rules && all >= FewestForCheckDigits; rule++)
        {
            var form = 0;
            var passed = 0;
            foreach (var value in traits)
            {
                form += (value.Form >> rule) & 1;
                passed += (value.Passed >> rule) & 1;
            }

            if (form >= FewestForCheckDigits && form * 5 >= all * 4 && passed * 10 >= form * 9)
                return new(SafeHarbor.SocialSecurityNumbers, "numbers with a check digit, as national, insurance, record and card numbers have", passed, all);
        }

        var born = Count(traits, value => value.Other.HasFlag(ValueLooks.BirthDate));
        if (all >= FewestForShares && born * 5 >= all * 4) return new(SafeHarbor.Dates, "dates of birth", born, all);

        var words = Count(traits, value => value.Other.HasFlag(ValueLooks.OneWord));
        var names = Count(traits, value => value.Other.HasFlag(ValueLooks.OneWord | ValueLooks.HoldsFrequentName));
        if (names >= 3 && words * 2 >= all && names * (words < FewestForShares ? 2 : 10) >= words) return new(SafeHarbor.Names, "names", words, all);
        return new(SafeHarbor.None, "", 0, all);
    }

    /// <summary>What the values of a column that is not read look like: also what single values show.</summary>
    public static ColumnJudgement OfUnread(ValueSample sample)
    {
        var all = sample.Count;
        var traits = sample.Traits;
        ColumnJudgement? Seen(SafeHarbor identifier, string what, int count, int fewest, int share) =>
            count >= fewest && count * share >= all ? new ColumnJudgement(identifier, what, count, all) : null;

        var named = Count(traits, value => value.Kind == IdentityKind.Name && value.Other.HasFlag(ValueLooks.HoldsFrequentName));
        var looksNamed = Count(traits, value => value.Kind == IdentityKind.Name);
        return Seen(SafeHarbor.EmailAddresses, "e-mail addresses", Count(traits, value => value.Kind == IdentityKind.EmailAddress), 1, ValueSample.Most)
            ?? Seen(SafeHarbor.SocialSecurityNumbers, "national numbers", Count(traits, value => value.Kind == IdentityKind.GovernmentNumber), 2, 10)
            ?? Seen(SafeHarbor.TelephoneNumbers, "telephone numbers", Count(traits, value => value.Kind == IdentityKind.TelephoneNumber), 2, 10)
            ?? Seen(SafeHarbor.WebAddresses, "web addresses", Count(traits, value => value.Other.HasFlag(ValueLooks.WebAddress)), 2, 10)
            ?? Seen(SafeHarbor.InternetAddresses, "internet addresses", Count(traits, value => value.Other.HasFlag(ValueLooks.InternetAddress)), 2, 10)
            ?? (named >= 2 && looksNamed * 2 >= all && named * 5 >= looksNamed ? new ColumnJudgement(SafeHarbor.Names, "names", looksNamed, all) : OfMany(sample));
    }

    private static int Count(ReadOnlySpan<ValueTraits> traits, Func<ValueTraits, bool> has)
    {
        var count = 0;
        foreach (var value in traits)
        {
            if (has(value)) count++;
        }

        return count;
    }
}
