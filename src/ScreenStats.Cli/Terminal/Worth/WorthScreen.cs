using ScreenStats.Evaluation;
using ScreenStats.Evaluation.Model;
using ScreenStats.Evaluation.Worth;

namespace ScreenStats.Cli.Terminal.Worth;

/// <summary>The answer of <c>value</c> for people: the verdict, what it did, what to choose, when that turns, how sure it is, what is missing.</summary>
internal static class WorthScreen
{
    /// <summary>What stands for a figure that there is not.</summary>
    public const string Undefined = "undefined";

    public static void Render(Findings findings, Screen screen)
    {
        var worth = findings.Worth;
        screen.Title(findings.Settings.Title + ": is it worth it?");
        screen.Line();
        // The verdict with what belongs to it; the page says the rest in words, and here tables do.
        screen.Text(string.Join(' ', worth.VerdictSentences.Select(sentence => sentence.Text)));
        screen.Line();
        screen.Text(Basis(worth));
        DidTables.Render(findings, worth, screen);
        ChoiceTables.Render(worth, screen);
        SureLines.Render(worth, screen);
        if (!worth.CountedSentences.IsEmpty)
        {
            Heading("What is counted", screen);
            screen.Text(string.Join(' ', worth.CountedSentences.Select(sentence => sentence.Text)));
        }

        if (!worth.Missing.IsEmpty)
        {
            Heading("What is missing", screen);
            foreach (var one in worth.Missing) screen.Indented("- " + one);
        }

        screen.Line();
        screen.Line(Cautions.Value);
        screen.Caution();
    }

    /// <summary>A heading after an empty line.</summary>
    public static void Heading(string text, Screen screen)
    {
        screen.Line();
        screen.Title(text);
    }

    /// <summary>A number by the one rounding rule of the reports.</summary>
    public static string Number(double value) => Rounding.Print(Cell.Number(value), Unit.Ratio);

    public static string Number(EstimateFinding figure) => figure.Estimate is { } value ? Number(value) : Undefined;

    public static string Share(double? value) => value is { } share ? Rounding.Print(Cell.Number(share), Unit.Proportion) : Undefined;

    /// <summary>The limits in words; empty where there are none, or they do not lie apart.</summary>
    public static string Limits(double? lower, double? upper) => (lower, upper) switch
    {
        ({ } from, { } to) => from < to ? $"{Number(from)} to {Number(to)}" : "",
        ({ } from, null) => from > 0 ? $"{Number(from)} or more" : "",
        (null, { } to) => $"{Number(to)} or less",
        _ => "",
    };

    /// <summary>A reason that holds for all stands alone, with the word before it that the caller has.</summary>
    public static string Alone(string reason) => reason.StartsWith("undefined: ", StringComparison.Ordinal) ? reason["undefined: ".Length..] : reason;

    private static string Basis(WorthFindings worth)
    {
        var money = worth.AnyStated ? $"Money in {worth.Currency}, prices of {worth.PriceYear?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "a year not stated"}; " : "";
        var perspective = worth.Perspective.Length > 0 ? worth.Perspective : "not stated";
        var discounted = worth.DiscountRate is { } rate ? $"discounted at {Share(rate)} a year after the first" : "nothing is discounted";
        // What is counted says how, where anything is.
        var text = $"{money}perspective: {perspective}{(worth.CountedSentences.IsEmpty ? "; " + discounted : "")}.";
        return char.ToUpperInvariant(text[0]) + text[1..];
    }
}
