namespace ScreenStats.Evaluation.Worth.Lists;

/// <summary>One item of a list of the field, answered as far as data and program file can.</summary>
/// <param name="Key">List and item, joined by a vertical bar.</param>
/// <param name="List"><c>wilson-jungner</c> (criteria for screening, 1968) or <c>cheers-2022</c> (reporting of economic evaluations).</param>
/// <param name="Item">Its number in the list.</param>
/// <param name="Question">What it asks, in our own words.</param>
/// <param name="Answer"><c>met</c>, <c>not met</c>, <c>in part</c>, <c>for people to say</c>; of the reporting list <c>stated</c>, <c>in part</c> or <c>not stated</c>.</param>
/// <param name="Evidence">What data or program file say of it, in words.</param>
public sealed record WorthCriterion(string Key, string List, int Item, string Question, string Answer, string Evidence);
