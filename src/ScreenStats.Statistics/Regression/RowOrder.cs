namespace ScreenStats.Statistics.Regression;

/// <summary>Orders groups by their rows alone, so that their labels do not matter. The rows of each are in one order already.</summary>
internal sealed class RowOrder : IComparer<IEnumerable<BinomialRow>>
{
    public static readonly RowOrder Instance = new();

    public int Compare(IEnumerable<BinomialRow>? left, IEnumerable<BinomialRow>? right)
    {
        using var a = (left ?? []).GetEnumerator();
        using var b = (right ?? []).GetEnumerator();
        while (true)
        {
            var (more, other) = (a.MoveNext(), b.MoveNext());
            if (!more || !other) return more.CompareTo(other);
            if (a.Current.Trials != b.Current.Trials) return a.Current.Trials.CompareTo(b.Current.Trials);
            if (a.Current.Events != b.Current.Events) return a.Current.Events.CompareTo(b.Current.Events);
            for (var j = 0; j < a.Current.Terms.Count; j++)
            {
                if (a.Current.Terms[j] != b.Current.Terms[j]) return a.Current.Terms[j].CompareTo(b.Current.Terms[j]);
            }
        }
    }
}
