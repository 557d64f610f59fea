using System.Collections.Immutable;
using ScreenStats.Statistics.Verification;

namespace ScreenStats.Statistics.Bounds;

/// <summary>A linear form over the six cells: confirmed, refuted, unverified positives; missed, agreed, unaudited negatives.</summary>
internal sealed record LinearForm(ImmutableArray<double> Coefficients)
{
    public LinearForm Plus(LinearForm other) => new([.. Coefficients.Zip(other.Coefficients, (a, b) => a + b)]);

    public LinearForm Minus(LinearForm other) => new([.. Coefficients.Zip(other.Coefficients, (a, b) => a - b)]);
}

/// <summary>A part of a whole, both linear in the cells.</summary>
internal sealed record Ratio(LinearForm Part, LinearForm Whole);

/// <summary>The numbers of runs in the six cells, and what linear forms come to on them.</summary>
internal sealed record CellForms(ImmutableArray<double> Cells)
{
    public static LinearForm Positives { get; } = new([1, 1, 1, 0, 0, 0]);

    public static LinearForm Negatives { get; } = new([0, 0, 0, 1, 1, 1]);

    public static CellForms Of(VerificationCounts counts) => Of(counts, counts.Missed, counts.Agreed);

    public static CellForms Of(VerificationCounts counts, double missed, double agreed) => new(
    [
        counts.Confirmed, counts.Refuted, counts.Positives - counts.VerifiedPositives,
        missed, agreed, Math.Max(0, counts.Negatives - (missed + agreed)),
    ]);

    public double Total(LinearForm form)
    {
        double sum = 0;
        for (var i = 0; i < Cells.Length; i++) sum += Cells[i] * form.Coefficients[i];
        return Math.Max(0, sum);
    }

    public double? Value(Ratio ratio)
    {
        var whole = Total(ratio.Whole);
        return whole > 0 ? Math.Clamp(Total(ratio.Part) / whole, 0, 1) : null;
    }

    public double StandardError(Ratio ratio, double value)
    {
        var whole = Total(ratio.Whole);
        if (!(whole > 0) || value <= 0 || value >= 1) return 0;
        double sum = 0;
        for (var i = 0; i < Cells.Length; i++)
        {
            var influence = ratio.Part.Coefficients[i] - (value * ratio.Whole.Coefficients[i]);
            sum += Cells[i] * influence * influence;
        }

        return Math.Sqrt(sum) / whole;
    }
}
