using System.Collections.Immutable;
using ScreenStats.Reporting.Charts.Model;
using ScreenStats.Reporting.Charts.Words;

namespace ScreenStats.Reporting.Charts.Flow;

/// <summary>
/// How many went which way: boxes that lead down, and to the right where something leaves or is found out. All boxes are drawn alike,
/// whatever is in them: only words and numbers say what they are. Narrow enough to be read on a phone.
/// </summary>
internal static class FlowChart
{
    /// <summary>Size of its words: larger than in other pictures, because it is drawn narrower.</summary>
    public const float TextSize = 17;

    private const double Edge = 8;
    private const double Indent = 34;
    private const double LeftEnd = 252;
    private const double SideStart = 278;
    private const double Line = 20;
    private const double Inside = 10;
    private const double Gap = 7;
    private const double Head = 5;

    /// <summary>Builds the diagram.</summary>
    /// <param name="frame">Identity and words of the picture.</param>
    /// <param name="bands">Its boxes from top to bottom; the first begins something.</param>
    public static Chart Of(ChartFrame frame, ImmutableArray<FlowBand> bands)
    {
        var drawing = new Drawing();
        foreach (var band in bands) drawing.Add(band);
        var height = (int)Math.Ceiling(drawing.Bottom + Edge);
        return new Chart(
            frame.Id, frame.Title, frame.Caption, frame.Description, frame.TableId,
            new Axis("", 0, Chart.Width, [], Lines: false), new Axis("", -height, 0, [], Lines: false), drawing.Marks, height) { Bare = true };
    }

    private static double High(FlowBox box) => (Line * (1 + box.Lines.Length)) + Inside;

    /// <summary>Where the next box stands, and what was drawn. Heights are counted downwards from 0, so they are negative.</summary>
    private sealed class Drawing
    {
        private readonly ImmutableArray<Mark>.Builder marks = ImmutableArray.CreateBuilder<Mark>();
        private double leftBottom;
        private double sideBottom;
        private double trunk;

        public double Bottom => Math.Max(leftBottom, sideBottom);

        public ImmutableArray<Mark> Marks => marks.ToImmutable();

        public void Add(FlowBand band)
        {
            var high = High(band.Box);
            var top = band.From switch
            {
                FlowBand.FlowStep.Start => Bottom + (marks.Count == 0 ? Edge : 3 * Gap),
                // A box with nothing beside it stands as low as what stands beside the one above, so that no room is lost.
                FlowBand.FlowStep.Next when band.Side.IsEmpty => Math.Max(leftBottom + (2.5 * Gap), sideBottom - high),
                _ => Bottom + (1.5 * Gap),
            };
            var left = band.From == FlowBand.FlowStep.Branch ? Indent + Edge : Edge;
            if (band.From == FlowBand.FlowStep.Next) Arrow((LeftEnd + Edge) / 2, leftBottom, (LeftEnd + Edge) / 2, top);
            if (band.From == FlowBand.FlowStep.Branch) Elbow(Edge + (Indent / 2), trunk, left, top + (high / 2));
            Box(band.Box, left, LeftEnd, top);
            leftBottom = top + high;
            // The next branch goes on where this one left the trunk: no stroke is drawn twice.
            trunk = band.From == FlowBand.FlowStep.Branch ? top + (high / 2) : leftBottom;
            var side = top;
            var (start, from) = (LeftEnd, top + (high / 2));
            foreach (var box in band.Side)
            {
                var at = Math.Min(side + (High(box) / 2), side + ((Line + Inside) / 2));
                Turn(start, from, SideStart, at);
                (start, from) = ((LeftEnd + SideStart) / 2, at);
                Box(box, SideStart, Chart.Width - Edge, side);
                sideBottom = side + High(box);
                side = sideBottom + Gap;
            }
        }

        private void Box(FlowBox box, double left, double right, double top)
        {
            var bottom = top + High(box);
            Path((left, top), (right, top), (right, bottom), (left, bottom), (left, top));
            Words(box.Name, box.Count, left + Inside, right - Inside, top + ((Line + Inside) / 2), strong: true);
            for (var line = 0; line < box.Lines.Length; line++)
            {
                Words(box.Lines[line].Name, box.Lines[line].Count, left + (2 * Inside), right - Inside, top + ((Line + Inside) / 2) + (Line * (line + 1)), strong: false);
            }
        }

        // A label's words begin, or end, a little beside its place.
        private void Words(string name, string count, double left, double right, double at, bool strong)
        {
            marks.Add(new LabelMark(left - LabelMark.Beside, -at, name, LabelSide.Right, Tone.Ink, strong) { Size = TextSize });
            if (count.Length > 0) marks.Add(new LabelMark(right + LabelMark.Beside, -at, count, LabelSide.Left, Tone.Ink, strong) { Size = TextSize });
        }

        private void Arrow(double x, double from, double y, double to)
        {
            Path((x, from), (y, to));
            Path((y - Head, to - (1.4 * Head)), (y, to), (y + Head, to - (1.4 * Head)));
        }

        private void Elbow(double x, double from, double right, double at)
        {
            Path((x, from), (x, at), (right, at));
            ToRight(right, at);
        }

        private void Turn(double left, double from, double right, double at)
        {
            var middle = (LeftEnd + SideStart) / 2;
            if (from == at) Path((left, from), (right, at));
            else if (left == middle) Path((middle, from), (middle, at), (right, at));
            else Path((left, from), (middle, from), (middle, at), (right, at));
            ToRight(right, at);
        }

        private void ToRight(double x, double at) => Path((x - (1.4 * Head), at - Head), (x, at), (x - (1.4 * Head), at + Head));

        private void Path(params ImmutableArray<(double X, double Y)> points) => marks.Add(new LineMark([.. points.Select(point => (point.X, -point.Y))], Tone.Ink));
    }
}
