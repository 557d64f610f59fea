using ScreenStats.Counting.Diagnostics;
using ScreenStats.Records.Formats;

namespace ScreenStats.Records.Deidentification.Pseudonyms;

/// <summary>Replaces what names people in an export by keyed pseudonyms, so that exports still link and nobody is named.</summary>
/// <remarks>
/// A pseudonym is <c>p1-</c> and 20 characters of base 32: 100 bits of HMAC-SHA-256 under the key. The same person gets the same pseudonym in every
/// export under the same key, whatever the case, the width of the letters, the composition of accents and the spaces around and
/// between them. Two of n people share one with probability below n squared / 2^101. Without the key nothing leads from a pseudonym to a
/// person; with it, every person can be tried. A blank stays blank. Other columns keep their bytes (as UTF-8), but a cell that a
/// spreadsheet would run as a formula gets an apostrophe before it.
/// A workbook becomes CSV in UTF-8 with commas. Of newline-delimited FHIR only the columns that the reader knows are written, as CSV: person (a
/// pseudonym), collected_at, result, reported_at, method; so no name, address, note or identifier of a resource can stay. Lines before the
/// headings, lines of totals and resources that are not to be read are left out, as the reader leaves them out, and that is said.
/// </remarks>
public static class Pseudonymizer
{
    /// <summary>Writes the file with pseudonyms: whole, or not at all.</summary>
    /// <param name="request">What is to be done.</param>
    /// <param name="progress">Told from time to time how far it is; null: nobody is told.</param>
    /// <param name="cancellationToken">Stops the work; nothing is then left.</param>
    /// <returns>What was done.</returns>
    /// <exception cref="PseudonymizeException">It cannot be done as asked: a weak or open key, an unknown column, a file in the way.</exception>
    /// <exception cref="UnusableDataException">The file cannot be split into its columns without doubt.</exception>
    /// <exception cref="IOException">The target could not be written, as on a full disk.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static PseudonymizeResult Write(PseudonymizeRequest request, IProgress<ReadProgress>? progress = null, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (!PersonText.Works) throw new PseudonymizeException("This machine cannot normalise text, so the same person could get two pseudonyms; install ICU (libicu) and let .NET use it.");
        CheckPlaces(request);
        using var source = PseudonymSource.Open(request, cancellationToken);
        TextEncoding? encoding = null;
        while (true)
        {
            var plan = PseudonymPlan.Of(request, source, encoding);
            try
            {
                return Write(request, plan, progress, cancellationToken);
            }
            catch (ReadAgainException again)
            {
                encoding = again.Encoding;
            }
        }
    }

    private static PseudonymizeResult Write(PseudonymizeRequest request, PseudonymPlan plan, IProgress<ReadProgress>? progress, CancellationToken cancellationToken)
    {
        if (plan.HasDates && plan.DateOrder is null) plan.SettleDates(cancellationToken);
        var key = request.CreateKey ? PseudonymKey.Create(request.KeyFile) : PseudonymKey.Read(request.KeyFile);
        var kept = false;
        try
        {
            using var file = new PrivateFile(request.Target);
            var writer = new PseudonymWriter(plan, new Pseudonym(key), file.Stream, progress, cancellationToken);
            writer.Run();
            cancellationToken.ThrowIfCancellationRequested();
            file.Keep();
            kept = true;
            return writer.Result(request.CreateKey);
        }
        finally
        {
            key.Dispose();
            // A key that was made for a file that is not there has named nobody.
            if (!kept && request.CreateKey) File.Delete(request.KeyFile);
        }
    }

    private static void CheckPlaces(PseudonymizeRequest request)
    {
        var target = Path.GetFullPath(request.Target);
        if (PrivateFile.Taken(target)) throw new PseudonymizeException($"{Path.GetFileName(target)} exists; nothing is written over. Choose another name for the result, or remove it yourself.");
        if (FileForm.Of(target) != default)
            throw new PseudonymizeException($"{Path.GetFileName(target)} would be CSV by another name: what is written is text in UTF-8. Let the name of the result end in .csv.");
        if (!Directory.Exists(Path.GetDirectoryName(target)))
        {
            throw new PseudonymizeException($"The folder that {Path.GetFileName(target)} is to be written to does not exist; make it first.");
        }

        var key = Path.GetFullPath(request.KeyFile);
        if (key == target || key == Path.GetFullPath(request.Source)) throw new PseudonymizeException("The key file is one of the two other files; give it a name of its own.");
        if (request.CreateKey && PrivateFile.Taken(key)) throw PseudonymKey.Exists(Path.GetFileName(key));
        // A key that cannot be used is said before the file is looked at.
        if (!request.CreateKey) PseudonymKey.Read(key).Dispose();
    }
}
