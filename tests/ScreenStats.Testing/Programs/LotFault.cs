namespace ScreenStats.Testing.Programs;

/// <summary>A lot that gives more false positives than the others would in its place.</summary>
/// <param name="Factor">How many times as many, 1 or more.</param>
/// <param name="Share">The share of all runs that the faulty lot should have, within a fifth of it.</param>
/// <param name="LeastRefuted">Refuted positives that the fault must add, at least, as expected.</param>
/// <param name="From">The part of the lot's days after which the fault begins, in [0, 1).</param>
public sealed record LotFault(double Factor, double Share, double LeastRefuted = 0, double From = 0);
