namespace ScreenStats.Counting.Cubes;

/// <summary>Checks the person products of the audits against the runs, the audits and the strata.</summary>
internal static class AuditProductAgreement
{
    /// <summary>True where the second total does not come before the first, so that a pair stands in one cell only.</summary>
    public static bool IsInOrder(AuditProductCell cell)
    {
        var strata = string.CompareOrdinal(cell.Stratum, cell.OtherStratum);
        return strata < 0 || (strata == 0 && cell.Total <= cell.OtherTotal);
    }

    /// <exception cref="ArgumentException">Sums over people differ from the runs; a total's square is too small; strata do not fit.</exception>
    public static void Check(TallyCells cells)
    {
        if (cells.Audits.IsEmpty && cells.AuditProducts.IsEmpty) return;
        var sums = new Balance("auditProducts", "screens");
        var audited = new Balance("auditProducts (audited)", "audits");
        var strata = new Balance("auditProducts (negative runs)", "auditStrata");
        var squares = new Balance("auditProducts (sums)", "auditProducts (squares)");
        var keys = new LevelPairs();
        foreach (var cell in cells.AuditProducts)
        {
            // Totals are whole numbers, so no sum is greater than the sum of squares.
            if (cell.Total == cell.OtherTotal && cell.Stratum == cell.OtherStratum) squares.Right(Key(keys, cell.Stratum, cell.Total), cell.Products);
            if (cell.Total != AuditTotal.Persons) continue;
            squares.Left(Key(keys, cell.OtherStratum, cell.OtherTotal), cell.Products);
            if (cell.OtherTotal is AuditTotal.Missed or AuditTotal.Agreed) audited.Left((ulong)cell.OtherTotal, cell.Products);
            else if (cell.OtherTotal != AuditTotal.Persons) sums.Left((ulong)cell.OtherTotal, cell.Products);
            if (cell.OtherTotal == AuditTotal.Negatives && cell.OtherStratum.Length > 0) strata.Left(Key(keys, cell.OtherStratum, AuditTotal.Negatives), cell.Products);
        }

        foreach (var cell in cells.Screens)
        {
            if (cell.Outcome == Outcome.Negative) sums.Right((ulong)AuditTotal.Negatives, cell.Runs);
            if (cell.Outcome != Outcome.Positive) continue;
            sums.Right((ulong)AuditTotal.Positives, cell.Runs);
            if (cell.FollowUp == FollowUp.Confirmed) sums.Right((ulong)AuditTotal.Confirmed, cell.Runs);
            if (cell.FollowUp == FollowUp.Refuted) sums.Right((ulong)AuditTotal.Refuted, cell.Runs);
        }

        foreach (var cell in cells.Audits)
        {
            if (cell.Result == FollowUp.Missed) audited.Right((ulong)AuditTotal.Missed, cell.Runs);
            if (cell.Result == FollowUp.Agreed) audited.Right((ulong)AuditTotal.Agreed, cell.Runs);
        }

        foreach (var cell in cells.AuditStrata)
        {
            if (cell.Origin != StratumOrigin.StatedNumber) strata.Right(Key(keys, cell.Stratum, AuditTotal.Negatives), cell.Negatives);
        }

        sums.MustBeEqual();
        audited.MustBeEqual();
        strata.MustBeEqual();
        squares.MustBeWithin();
    }

    private static ulong Key(LevelPairs keys, string stratum, AuditTotal total) => keys.Key(stratum, "", default, (int)total);
}
