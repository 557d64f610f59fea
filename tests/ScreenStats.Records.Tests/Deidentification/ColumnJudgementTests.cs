using System.Globalization;
using System.Text;
using CsCheck;
using ScreenStats.Counting.Diagnostics;
using ScreenStats.Counting.Programs;
using ScreenStats.Records.Deidentification;
using ScreenStats.Records.Understanding;

namespace ScreenStats.Records.Tests.Deidentification;

public sealed class ColumnJudgementTests
{
    public static TheoryData<string, string[]> Pseudonyms => new()
    {
        { "badges in sequence", [.. Enumerable.Range(100_000_000, 400).Select(i => i.ToString(CultureInfo.InvariantCulture))] },
        { "badges of eleven figures in sequence", [.. Enumerable.Range(0, 400).Select(i => (50_000_000_000 + i).ToString(CultureInfo.InvariantCulture))] },
        { "badges with leading zeros", [.. Enumerable.Range(1, 400).Select(i => i.ToString("D10", CultureInfo.InvariantCulture))] },
        { "badges that look like a word and a number", [.. Enumerable.Range(1, 60).Select(i => $"ADAM{i}")] },
        { "log-in like codes", [.. Enumerable.Range(1, 60).Select(i => $"anna{i:D2}")] },
        { "the spelling alphabet", ["Alfa", "Bravo", "Charlie", "Delta", "Echo", "Foxtrot", "Golf", "Hotel", "India", "Juliett", "Kilo", "Lima", "Mike", "November", "Oscar", "Papa", "Quebec", "Romeo", "Sierra", "Tango", "Uniform", "Victor", "Whiskey", "Yankee", "Zulu"] },
        { "birds and plants", ["Falcon", "Robin", "Heron", "Hazel", "Rowan", "Iris", "Olive", "Rose", "Willow", "Jasmine", "Violet", "Lily"] },
        { "offices", ["nurse", "desk", "night", "early", "late", "kiosk", "north", "south"] },
        { "letters", [.. Enumerable.Range('A', 26).Select(c => ((char)c).ToString())] },
        { "days of the program", [.. Enumerable.Range(0, 200).Select(i => new DateOnly(2026, 1, 5).AddDays(i).ToString("O", CultureInfo.InvariantCulture))] },
        { "two operators", ["anna", "ben"] },
        { "hexadecimal codes", [.. Enumerable.Range(1, 300).Select(i => (i * 2_654_435_761L % 4_294_967_291L).ToString("x8", CultureInfo.InvariantCulture))] },
        { "random letters", [.. Enumerable.Range(1, 300).Select(i => new string([.. Enumerable.Range(0, 6).Select(k => (char)('a' + (((i * 7919) + (k * k * 104_729) + (i >> k)) % 26)))]))] },
    };

    public static TheoryData<string, string[], string> People => new()
    {
        { "given names", ["Anna", "Bernd", "Carla", "David", "Elke", "Frank", "Greta", "Hans", "Ines", "Jonas"], "names" },
        { "given names in capitals", ["JOSE", "MARIA", "LUIS", "CARMEN", "PEDRO"], "names" },
        { "family names", ["Schmidt", "Mueller", "Fischer", "Abendroth", "Zweig", "Lindqvist", "Garcia", "Okafor", "Novak", "Sato"], "names" },
        { "tax numbers", [.. Numbers(1, 11)], "check digit" },
        { "insurance numbers", [.. Numbers(0, 9)], "check digit" },
        { "insurance numbers in groups", [.. Numbers(0, 9).Select(number => $"{number[..3]} {number[3..6]} {number[6..]}")], "check digit" },
        { "NHS numbers", [.. Numbers(4, 10)], "check digit" },
        { "Spanish numbers", [.. Enumerable.Range(0, 50).Select(i => 10_000_000 + (i * 12_347)).Select(i => $"{i}{"TRWAGMYFPDXBNJZSQVHLCKE"[i % 23]}")], "check digit" },
        { "dates of birth", [.. Enumerable.Range(0, 30).Select(i => new DateOnly(1960, 1, 5).AddDays(i * 431).ToString("dd.MM.yyyy", CultureInfo.InvariantCulture))], "dates of birth" },
    };

    [Theory]
    [MemberData(nameof(Pseudonyms))]
    public void Badges_and_codes_are_no_people(string what, string[] values) =>
        ColumnJudgement.OfMany(Sample(values)).Identifier.Should().Be(SafeHarbor.None, what);

    [Theory]
    [MemberData(nameof(People))]
    public void Columns_of_people_are_refused_without_a_value(string what, string[] values, string words)
    {
        foreach (var column in (string[])["person", "operator"])
        {
            using var folder = new TestFolder().With("screening.csv", "person,operator,site,collected_at,result\n" + string.Concat(
                values.Select((value, i) => (column == "person" ? $"{value},op{i % 3}" : $"p{i},{value}") + ",North,2026-01-05,neg\n")));
            var found = folder.Refused().Should().ContainSingle(what).Subject;
            found.Code.Should().Be(ReadingDiagnostics.NamesPeople);
            found.Column.Should().Be(column);
            found.Message.Should().Contain(words).And.Contain("pseudonymize").And.NotContainAny(values);
        }
    }

    [Fact]
    public void The_judgement_does_not_depend_on_order_repeats_or_threads() =>
        Gen.Int[1, 2000].Array[1, 600].Sample(numbers =>
        {
            var values = numbers.Select(i => $"v{i}").ToArray();
            var whole = Sample(values);
            var left = Sample([.. values.Where((_, i) => i % 2 == 0).Reverse()]);
            left.Add(Sample([.. values.Where((_, i) => i % 2 == 1), values[0]]));
            return whole.Count == Math.Min(values.Distinct().Count(), ValueSample.Most) && whole.Count == left.Count && whole.Limit == left.Limit
                && whole.Traits.SequenceEqual(left.Traits);
        }, iter: 200);

    [Theory]
    [InlineData("Date of Birth", "teal", PrivacyDiagnostics.IdentifierHeading, "(C)")]
    [InlineData("Geburtsdatum", "teal", PrivacyDiagnostics.IdentifierHeading, "(C)")]
    [InlineData("Prénom", "teal", PrivacyDiagnostics.IdentifierHeading, "(A)")]
    [InlineData("Teléfono", "teal", PrivacyDiagnostics.IdentifierHeading, "(D)")]
    [InlineData("zip_code", "teal", PrivacyDiagnostics.IdentifierHeading, "(B)")]
    [InlineData("E-Mail", "teal", PrivacyDiagnostics.IdentifierHeading, "(F)")]
    [InlineData("Fax", "teal", PrivacyDiagnostics.IdentifierHeading, "(E)")]
    [InlineData("SSN", "teal", PrivacyDiagnostics.IdentifierHeading, "(G)")]
    [InlineData("MRN", "teal", PrivacyDiagnostics.IdentifierHeading, "(H)")]
    [InlineData("Versichertennummer", "teal", PrivacyDiagnostics.IdentifierHeading, "(I)")]
    [InlineData("IBAN", "teal", PrivacyDiagnostics.IdentifierHeading, "(J)")]
    [InlineData("Passport No", "teal", null, "")]
    [InlineData("passport number", "teal", PrivacyDiagnostics.IdentifierHeading, "(K)")]
    [InlineData("License plate", "teal", PrivacyDiagnostics.IdentifierHeading, "(L)")]
    [InlineData("device serial", "teal", PrivacyDiagnostics.IdentifierHeading, "(M)")]
    [InlineData("URL", "teal", PrivacyDiagnostics.IdentifierHeading, "(N)")]
    [InlineData("IP address", "teal", PrivacyDiagnostics.IdentifierHeading, "(O)")]
    [InlineData("fingerprint", "teal", PrivacyDiagnostics.IdentifierHeading, "(P)")]
    [InlineData("Photo", "teal", PrivacyDiagnostics.IdentifierHeading, "(Q)")]
    [InlineData("user name", "teal", PrivacyDiagnostics.IdentifierHeading, "(R)")]
    [InlineData("colour", "teal", null, "")]
    [InlineData("colour", "ada@example.org", PrivacyDiagnostics.IdentifierValues, "(F)")]
    [InlineData("colour", "202-555-0123|202-555-0124", PrivacyDiagnostics.IdentifierValues, "(D)")]
    [InlineData("colour", "078-05-1120|219-09-9999", PrivacyDiagnostics.IdentifierValues, "(G)")]
    [InlineData("colour", "https://example.org/a|https://example.org/b", PrivacyDiagnostics.IdentifierValues, "(N)")]
    [InlineData("colour", "192.0.2.7|2001:db8::7:1", PrivacyDiagnostics.IdentifierValues, "(O)")]
    [InlineData("colour", "Ada Abendroth|Bernd Zweig|Carla Lindqvist", PrivacyDiagnostics.IdentifierValues, "(A)")]
    [InlineData("department", "Human Resources|Quality Assurance|Front Office|Goods Inward", null, "")]
    [InlineData("batch note", "10.11.2026|11.11.2026|12.11.2026", null, "")]
    public void A_column_that_is_not_read_is_named_with_its_identifier(string heading, string values, string? code, string letter)
    {
        using var folder = new TestFolder().With("screening.csv", $"person,site,collected_at,result,{heading}\n" + string.Concat(
            values.Split('|').Select((value, i) => $"p{i},North,2026-01-0{i + 1},neg,{value}\n")));
        var found = folder.Read().Diagnostics;
        if (code is null)
        {
            found.Should().BeEmpty();
            return;
        }

        var one = found.Should().ContainSingle().Subject;
        one.Code.Should().Be(code);
        one.Severity.Should().Be(Severity.Warning);
        one.Message.Should().Contain(letter).And.Contain("column 5").And.Contain("--drop").And.NotContainAny(values.Split('|').Where(value => value.Length > 1));
    }

    [Fact]
    public void A_heading_that_is_itself_an_address_is_not_shown()
    {
        using var folder = new TestFolder().With("screening.csv", "person,site,collected_at,result,ada@example.org\np1,North,2026-01-05,neg,bob@example.org\n");
        folder.Read().Diagnostics.Should().ContainSingle().Which.Message.Should().Contain("column 5 is").And.NotContain("example.org");
    }

    [Theory]
    [InlineData("123-45-6789", IdentityKind.GovernmentNumber)]
    [InlineData("123 45 6789", IdentityKind.GovernmentNumber)]
    [InlineData("QQ 12 34 56 C", IdentityKind.GovernmentNumber)]
    [InlineData("000-45-6789", IdentityKind.None)]
    [InlineData("900-45-6789", IdentityKind.None)]
    [InlineData("123-00-6789", IdentityKind.None)]
    [InlineData("QQ123456C", IdentityKind.None)]
    [InlineData("ADAM12", IdentityKind.None)]
    [InlineData("p1-pstphfz1ht4e7vkpdna8", IdentityKind.None)]
    public void Government_numbers_are_seen_where_their_form_is_certain(string value, object kind) =>
        IdentityRule.Of(Encoding.UTF8.GetBytes(value)).Should().Be((IdentityKind)kind);

    private static IEnumerable<string> Numbers(int rule, int length)
    {
        for (long i = 0, made = 0; made < 40; i++)
        {
            var text = ((i * 7_654_321L) + 123_456_789L).ToString("D" + length, CultureInfo.InvariantCulture);
            text = text[^length..];
            if (CheckDigits.Passes(rule, Encoding.ASCII.GetBytes(text)) is not true) continue;
            made++;
            yield return text;
        }
    }

    private static ValueSample Sample(string[] values)
    {
        var sample = new ValueSample();
        foreach (var value in values)
        {
            var bytes = Encoding.UTF8.GetBytes(value);
            sample.Take(TextCodes.Hash(bytes), bytes);
        }

        return sample;
    }
}
