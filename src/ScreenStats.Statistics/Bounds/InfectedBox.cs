namespace ScreenStats.Statistics.Bounds;

/// <summary>The least and the greatest number of infected runs among the positives and among the negatives, as linear forms of the cells.</summary>
internal sealed record InfectedBox(
    LinearForm PositivesLow, LinearForm PositivesHigh, LinearForm NegativesLow, LinearForm NegativesHigh, bool PositivesCompatible, bool NegativesCompatible)
{
    public static InfectedBox Of(CellForms cells, ConfirmatoryAccuracy confirmatory)
    {
        var (positivesLow, positivesHigh, positivesCompatible) = Side(cells, 0, confirmatory);
        var (negativesLow, negativesHigh, negativesCompatible) = Side(cells, 3, confirmatory);
        return new InfectedBox(positivesLow, positivesHigh, negativesLow, negativesHigh, positivesCompatible, negativesCompatible);
    }

    private static (LinearForm Low, LinearForm High, bool Compatible) Side(CellForms cells, int at, ConfirmatoryAccuracy confirmatory)
    {
        var (low, below, above) = Verified(cells, at, confirmatory.Sensitivity.Upper, confirmatory.Specificity.Lower, unverified: 0);
        var (high, highBelow, highAbove) = Verified(cells, at, confirmatory.Sensitivity.Lower, confirmatory.Specificity.Upper, unverified: 1);
        return (low, high, !((below && highBelow) || (above && highAbove)));
    }

    /// <summary>(c - (1 - P) m)/(S + P - 1) as a form of the confirmed and the refuted, cut to 0..m; and whether it lay below or above.</summary>
    private static (LinearForm Form, bool Below, bool Above) Verified(CellForms cells, int at, double sensitivity, double specificity, double unverified)
    {
        var youden = sensitivity + specificity - 1;
        var onConfirmed = specificity / youden;
        var onRefuted = -(1 - specificity) / youden;
        var infected = (cells.Cells[at] * onConfirmed) + (cells.Cells[at + 1] * onRefuted);
        // None and all are exact but for rounding, and a rounding must not make one person of nobody.
        var all = cells.Cells[at] + cells.Cells[at + 1];
        var slack = 1e-12 * all;
        var below = infected < -slack;
        var above = infected > all + slack;
        var coefficients = new double[6];
        (coefficients[at], coefficients[at + 1]) = infected <= slack ? (0, 0) : infected >= all - slack ? (1, 1) : (onConfirmed, onRefuted);
        coefficients[at + 2] = unverified;
        return (new LinearForm([.. coefficients]), below, above);
    }
}
