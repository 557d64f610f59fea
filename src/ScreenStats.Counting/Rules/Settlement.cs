using ScreenStats.Counting.Cubes;

namespace ScreenStats.Counting.Rules;

/// <summary>One change of what is known about the follow-up of one run.</summary>
/// <param name="Known">Number of the local day at whose end it is known, as <see cref="Moment.DayNumber"/>.</param>
/// <param name="Before">Follow-up before.</param>
/// <param name="SettlingBefore">Position of the specimen it rested on before; -1 for none.</param>
/// <param name="After">Follow-up from then on.</param>
/// <param name="SettlingAfter">Position of the specimen it rests on from then on; -1 for none.</param>
public readonly record struct Settlement(int Known, FollowUp Before, int SettlingBefore, FollowUp After, int SettlingAfter);
