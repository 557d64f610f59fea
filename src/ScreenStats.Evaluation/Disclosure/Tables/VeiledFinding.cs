using System.Collections.Immutable;
using ScreenStats.Evaluation.Model;

namespace ScreenStats.Evaluation.Disclosure.Tables;

/// <summary>The tables and sentences of an analysis as they may be seen.</summary>
internal sealed record VeiledFinding(ImmutableArray<ITable> Tables, ImmutableArray<Sentence> Sentences) : IFinding;
