using System.Globalization;
using ScreenStats.Counting.Cubes;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Ledger;
using ScreenStats.Records;
using ScreenStats.Records.Deidentification;
using ScreenStats.Records.Validation;
using ScreenStats.Warehouse.Contract;
using ScreenStats.Warehouse.Sql;

namespace ScreenStats.Warehouse.Reading;

/// <summary>What is said of the rows of one view.</summary>
internal sealed class ViewFindings(ExportKind export, string view)
{
    private readonly List<Diagnostic> found = [];

    public IReadOnlyList<Diagnostic> Found => found;

    /// <summary>Rows that are set aside for one reason.</summary>
    public void SetAside(RowFault fault, long rows)
    {
        var (finding, column) = Of(fault);
        var what = finding switch
        {
            Finding.MissingValue => $"no {column}",
            Finding.NameTooLong => $"a {column} of more than 200 bytes",
            Finding.UnreadableDate => $"a {column} outside of the years 1970 to 2105",
            _ => $"a {column} that is not one of the agreed words",
        };
        Say(FindingTexts.Code(finding), Severity.Warning, column, rows, $"{Figure(rows)} {(rows == 1 ? "row has" : "rows have")} {what} in the view {view}. {(rows == 1 ? "It was" : "They were")} set aside; correct the view.");
    }

    /// <summary>Values that are none of the agreed words, of a column that is not required.</summary>
    public void UnknownWords(string column, long rows)
    {
        if (rows == 0) return;
        Say(ReadingDiagnostics.UnreadableValue, Severity.Warning, column, rows,
            $"{Figure(rows)} {(rows == 1 ? "row has" : "rows have")} a {column} that is not one of the agreed words in the view {view}; it counts as not recorded. Write the agreed words in the view.");
    }

    /// <summary>Looks at values of a column that names people, which must be pseudonyms.</summary>
    /// <param name="column">The column.</param>
    /// <param name="values">Different values.</param>
    /// <param name="addresses">Rows known to hold an e-mail address.</param>
    public void Identities(string column, IEnumerable<string> values, long addresses = 0)
    {
        var sample = new ValueSample();
        var kinds = new int[Enum.GetValues<IdentityKind>().Length];
        var all = 0;
        foreach (var value in values)
        {
            var text = System.Text.Encoding.UTF8.GetBytes(value);
            kinds[(int)IdentityRule.Of(text)]++;
            sample.Take(Names.Hash(value), text);
            all++;
        }

        var judged = kinds[(int)IdentityKind.EmailAddress] > 0 ? new ColumnJudgement(SafeHarbor.EmailAddresses, "e-mail addresses", kinds[(int)IdentityKind.EmailAddress], all)
            : addresses > 0 ? new ColumnJudgement(SafeHarbor.EmailAddresses, "e-mail addresses", (int)Math.Min(addresses, int.MaxValue), (int)Math.Clamp(addresses, all, int.MaxValue))
            : kinds[(int)IdentityKind.GovernmentNumber] > 0 ? new ColumnJudgement(SafeHarbor.SocialSecurityNumbers, "national numbers", kinds[(int)IdentityKind.GovernmentNumber], all)
            : kinds[(int)IdentityKind.TelephoneNumber] > 0 ? new ColumnJudgement(SafeHarbor.TelephoneNumbers, "telephone numbers", kinds[(int)IdentityKind.TelephoneNumber], all)
            : kinds[(int)IdentityKind.Name] > 0 ? new ColumnJudgement(SafeHarbor.Names, "names", kinds[(int)IdentityKind.Name], all)
            : ColumnJudgement.OfMany(sample);
        if (judged.Identifier != SafeHarbor.None) found.Add(IdentityTexts.Refused(export, column, view, judged));
    }

    /// <summary>The line of set-aside.csv for a row.</summary>
    public SetAsideRow Row(long? number, RowFault fault)
    {
        var (finding, column) = Of(fault);
        return new SetAsideRow(view, number ?? 0, FindingTexts.Code(finding), finding switch
        {
            Finding.UnknownResult => $"{column} is none of the agreed words",
            Finding.UnreadableDate => $"{column} is outside of the years 1970 to 2105",
            _ => FindingTexts.Reason(finding, column),
        }, null, null);
    }

    public void Say(string code, Severity severity, string column, long rows, string message) => found.Add(new(code, severity, view, null, column, message, Math.Max(1, rows)));

    public static string Figure(long rows) => rows.ToString("N0", CultureInfo.InvariantCulture);

    private static (Finding Finding, string Column) Of(RowFault fault) => fault switch
    {
        RowFault.NoPerson => (Finding.MissingValue, ViewContract.Person),
        RowFault.NoSite => (Finding.MissingValue, ViewContract.Site),
        RowFault.LongSite => (Finding.NameTooLong, ViewContract.Site),
        RowFault.NoDate => (Finding.MissingValue, ViewContract.CollectedOn),
        RowFault.ImpossibleDate => (Finding.UnreadableDate, ViewContract.CollectedOn),
        RowFault.NoResult => (Finding.MissingValue, ViewContract.Result),
        _ => (Finding.UnknownResult, ViewContract.Result),
    };
}
