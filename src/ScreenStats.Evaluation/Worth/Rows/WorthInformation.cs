namespace ScreenStats.Evaluation.Worth.Rows;

/// <summary>What it would be worth to know something exactly before choosing, for one choice over the days looked at.</summary>
/// <param name="Parameter">The figure; <c>everything</c> for all of them together; <c>sample-of-negatives</c> for verifying a sample of them.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="Value">What knowing is worth, in money.</param>
/// <param name="StandardError">Its standard error from the number of draws; null where nothing was drawn.</param>
/// <param name="Method">The method.</param>
/// <param name="Sample">Negatives to verify, where it is a sample of them; else null.</param>
/// <param name="SampleCost">What these cost; else null.</param>
public sealed record WorthInformation(string Parameter, string Name, double Value, double? StandardError, string Method, long? Sample = null, double? SampleCost = null);
